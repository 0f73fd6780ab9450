//! English words, and English words that look like words of other languages.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "king | kign | knig"),
    (Man(Queen), "queen | quen | qeen | quenn | qween | queeen"),
    (Man(Rook), "rokk | rooke | rook | rok | roook | rooks"),
    (Man(Bishop), "bishop | bishup | bisop | bihsop | bishob"),
    (
        Man(Knight),
        "knite | knight | horse | knigt | kinght | knigth | kight | knght",
    ),
    (Man(Pawn), "pawn | pwan | pown"),
    (
        Takes,
        "grab | grabs | eats | eat | takes | take | taking | captures | capture | capturing | x",
    ),
    (To, "to | goes | goes to | moves | move | moves to | in"),
    (On, "on | from | at"),
    (Check, "check | ch | with check | checks"),
    (
        Mate,
        "mate | checkmate | mates | checkmates | check mate | with mate | is mate | is checkmate \
         | and mate | and its mate | and it's mate | and it is mate | matt",
    ),
    (With, "with | using"),
    (
        Puts,
        "sac | sacs | sack | sacrifice | sacrifices | put | place | offer",
    ),
    (WingOf(CastlingSide::KingSide), "king's | kings"),
    (WingOf(CastlingSide::QueenSide), "queen's | queens"),
    (Castles(None), "castles | castle | castling"),
    (Wing(CastlingSide::KingSide), "short | kingside"),
    (Wing(CastlingSide::QueenSide), "long | queenside"),
    (Side, "side"),
    (
        Promotes,
        "make | become | promoted | underpromote | underpromoting | underpromotion | promotes | promote | promoting | promotion | becomes | becoming | makes | making \
         | underpromotes | queening",
    ),
    (EnPassant, "ep | passant | en passant | in passing"),
    (Any, "any | anything | whatever | any move | no matter what"),
    (Or, "or | alternatively | or else"),
    (
        If,
        "if | after | when | in case of | in the case of | on the other hand",
    ),
    (
        Then,
        "then | and | followed | followed by | next | threat | threatening | threatens | by \
         | and then | but then | but now | and now | and next | and after that | after that \
         | met by | answered by | and finally",
    ),
    (
        Not,
        "not | never | don't | dont | do not | doesn't | doesnt | isn't | isnt | cannot | can't | cant \
         | didn't | didnt | wouldn't | wouldnt | won't | wont | without | and not | but not | no way \
         | neither | nor | forget | cancel | ignore | i take back | i am not playing | i'm not playing | don't play | do not play",
    ),
    (
        No,
        "no | nope | nah | oh no | wait | no wait | oh wait | wait no | scratch that | strike that | forget that | ignore that | disregard | disregard that | disregard this | ignore the last one | ignore this | ignore it | forget this | forget it \
         | i take it back | i take that back | hmm no | nvm | scrap that | nvm scrap that | cancel that",
    ),
    (
        TakesBack,
        "should have been | was meant to be | meant to be | oops | whoops | sorry | correction | scratch \
         | meant | i meant | i mean | mean | meant to write | meant to say | meant to type | rather | or rather \
         | edit | edited | typo | misclick | mistyped | should be | should read | make that | strike that \
         | forget that | ignore that | never mind | nevermind | actually | actually no | no actually \
         | on second thought | on second thoughts | changed my mind | i change my mind | i changed my mind \
         | my bad | i correct | correcting | cancel that | hang on | hold on | i take it back | i take that back",
    ),
    (
        Instead,
        "the immediate | an immediate | instead of | rather than | in place of | as opposed to | than | better than | stronger than \
         | faster than | over | beats | outdoes",
    ),
    (
        Unlike,
        "only works after | works only after | only after | comes after | only good after | comes later | later",
    ),
    (But, "but | however | yet | although | though | whereas"),
    (Before, "before | prior to"),
    (
        Former,
        "was my plan | my plan | plan | my first move | my idea was | idea | thought | first thought | my first thought | considered | wanted | tried | tempting | first idea \
         | first instinct | at first | looked at | was thinking | thought of | thought about | i wrote | wrote \
         | would have | could have | was going to | almost played | nearly played | intended | had in mind | first try \
         | my first idea | first wanted | typed | said | i said | will say | everyone says | everybody wants | everyone wants | people play | everyone will say",
    ),
    (
        Seems,
        "looks | seems | appears | looks like | seems like | looked | seemed",
    ),
    (
        Hedge,
        "maybe | perhaps | might | could | might be | may be | could be | not sure | unsure | not certain | possibly \
         | no idea | dont know | don't know | do not know | idk | just a guess | wild guess | just guessing | guessing \
         | not 100 sure | no clue | mabye | mayb | prob | probs | probably | i wonder about | wonder about | something like | or something | if i had to guess | supposedly | leaning | leaning to | leaning towards | inclined | inclined to | inclined to play | torn | torn between | undecided | undecided between | can't decide | cant decide | cannot decide \
         | choosing between | hesitating between",
    ),
    (
        Fails,
        "slip | a slip | slip of the finger | an accident | by accident | fails | failing | wrong | loses | losing | bad | blunder | blunders | mistake | error | refuted | too slow | slow \
         | premature | and nothing | to nothing | gives nothing | nowhere | escapes | escape | runs away | gets away | gets out \
         | no good | not good | not enough | no mate | not mate | isn't mate | isnt mate | is not mate \
         | only a draw | only draws | just a draw | doesn't work | doesnt work | does not work | didn't work \
         | didnt work | did not work | won't work | wont work | will not work | can't work | cannot work | not working \
         | doesn't win | does not win | doesnt win | doesn't mate | does not mate | doesnt mate | isn't good | isnt good | is not good \
         | runs into | useless | hopeless | no use | fail | failed | pointless | flops | falls short | not the solution \
         | not the answer | not right | not correct | isn't right | isn't it at all | not it | does nothing | achieves nothing \
         | not work | throws it away | too early | incorrect | impossible | not possible | no longer works | dead end | gets eaten | is eaten | gets taken | gets captured | can't be it | cannot be it | cant be it | can't be right | cannot be right | cant be right | nothing either | gets nowhere | goes nowhere | leads nowhere | doesn't do anything | doesnt do anything | does not do anything | isn't the move | is not the move | isnt the move | isn't the answer | isnt the answer | isn't the key | isnt the key | is not the key | is the trap | is a trap",
    ),
    (
        Works,
        "work | works | does | does work | does it | does the trick | black loses | he loses | black is losing \
         | black is lost | it works",
    ),
    (
        First,
        "but first | but first i | but first comes | but first i play",
    ),
    (
        Better,
        "better | best | stronger | right | correct | correct is | right is | better is | is better | is right | is correct \
         | is stronger | is best | comes first | goes first | first comes | the right move | right move | right order \
         | instead | even better | much better | is the right move | is the answer | is the key | is the solution",
    ),
    (
        Because,
        "because | cause | since | due | due to | because of | bc | cuz | as then",
    ),
    (
        So,
        "so | therefore | thus | hence | that's why | thats why | that is why | which is why",
    ),
    (
        Claim,
        "what works is | what works | what wins is | what wins | say | i say | say now | play | sealed | submit | final | i choose | choose | my move | go with | going with | pick",
    ),
    (Answer, "answer | solution | key | final answer"),
    (Quits, "i give up | giving up | give up | i resign"),
    (
        Else,
        "no other | no other move | nothing | everything else | all else | anything else | nothing else | other moves | others | the rest | all other moves \
         | every other move | any other move | other tries | all others | other defences | other lines",
    ),
    (
        Aside,
        "yesterday | week | game | games | played | last | tournament | opponent | he | she | they | him | her | opening | was \
         | were | had | did | club | round | against | video | book | remember | ago | would've | tomorrow | today | online \
         | board | clock | seat | line | defence | defense | attack | gambit | variation | similar | like | likes",
    ),
    (
        Tag,
        "isnt it | isn't it | isn't that it | right coach | am i right | is that right | innit",
    ),
    (
        Asks,
        "would | could it be | could this be | might it be | might this be | would this be | whats | what's | what | why | how | who | where | which | is | are | can | should | anyone | someone | what about | how about \
         | what if | what happens | why not | is it | do | what happens after | what happens if | what about after | does that \
         | would it be | could it be | should i | can i | can you",
    ),
    (
        Hail,
        "hi | hello | hey | ok | okay | hmm | hm | coach | well | uh | um | oh | ah | hi coach | hey coach",
    ),
    (
        Filler,
        "disc | be | been | being | easy | finally | got | it | thanks | thank | you | lol | haha | yes \
         | yay | nice | good | morning | evening | afternoon | cool | please | pls | my | mine | the | an | his | its \
         | white | black | id | i'd | i'll | ill | i'm | im | it's | that's | thats | think | found | this | one | first | wins \
         | winning | win | forced | here | again | second | try | guess | go | going | will \
         | now | ready | done | solved | boom | wow | eh | double | dbl | discovered | dis | everyone | all \
         | team | mr | ms | mrs | sir | s | m | ll | d | i | a | an | just | only | too | also | at once | right away | straight away \
         | immediately | directly | at all | believe | take that | take this | take it easy | take care | take your time \
         | take a look | takes time | take notes | takes a while | come on | come | check this | check this out | check it out \
         | check that | check it | check out | check my | of course | no problem | no doubt | for sure | by the way | to be honest \
         | obviously | simply | clearly | yeah | yep | phew | ha | really | bad luck | too bad | bad for black \
         | not bad | no mistake | make no mistake | no mistakes | great | lovely | beautiful | ouch | bye | on my way | to me \
         | first of all | in the end | at last | got it | let's | lets | with that | not hard | not difficult | easy peasy | no words \
         | to the king | to you | on you | in time | on time | after all | in your face | checked | double checked | not only \
         | for free | no castling | correct me if i'm wrong | correct me if im wrong | if i'm wrong | if im wrong | if i am wrong | unless i'm wrong | unless im wrong | no defence | no defense | no escape | no way out | without mercy | cannot escape | can't escape | cant escape \
         | never loses | no chance | without doubt | without a doubt",
    ),
    // Words of this language that another one has too, with another meaning.
    (
        Other,
        "die | tour | dame | mat | man | men | per | son | pour | sur | fin | hat | war | gut | rang | bald | kind | not | gift \
         | hier | vers | sale | more | dan | pak | van | me | ma | mi | re | ne | con | non | nee | den | dem | das | des | de | da | la | le | el | il \
         | si | se | no | o | e | y | u | a | en | an | on | do | to | ze | za | na | ten | ha | is | it | her | tak | pas | fou | pion | ale | sol | ode | era \
         | dove | come | male | pure | more | dice | fare | ora | via | par | est | tot | net | of | in | door | want | even | over | later | eerst \
         | roi | rey | che | marche | gram | regina | donna | lepper | also | aber | bon | car | comment | point | non | main | bien | mai \
         | mas | pero | solo | sin | sino | tan | van | luego | once | para | lo | as | ser | dos | por | um | hora | cava | pois | nem | nie | nem | vagy | ide | az",
    ),
];
