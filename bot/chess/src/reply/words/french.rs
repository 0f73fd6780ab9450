//! French words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "roi"),
    (Man(Queen), "dame | reine"),
    (Man(Rook), "tour"),
    (Man(Bishop), "fou"),
    (Man(Knight), "cavalier"),
    (Man(Pawn), "pion"),
    (Takes, "prendre | prenez | prend | prends | capture"),
    (To, "en | à | vers | sur | va | va en | joue en"),
    (On, "de | depuis | du"),
    (Check, "échec | avec échec | échecs"),
    (Mate, "mat | échec et mat | est mat | et mat | et c'est mat"),
    (With, "avec"),
    (Puts, "sacrifie"),
    (Castles(None), "roque"),
    (Wing(CastlingSide::KingSide), "petit"),
    (Wing(CastlingSide::QueenSide), "grand"),
    (
        Promotes,
        "promeut | promouvoir | promotion | se promeut | devient",
    ),
    (EnPassant, "en passant | passant"),
    (Any, "n'importe | n'importe quoi | n'importe quel coup"),
    (Or, "ou | ou bien"),
    (If, "si | après | en cas de"),
    (
        Then,
        "puis | et | ensuite | suivi de | et puis | et ensuite | mais alors | alors | menace | et maintenant",
    ),
    (
        Not,
        "pas | ne | jamais | et pas | et non | mais pas | et non pas | pas tout de suite",
    ),
    (No, "non | ah non"),
    (
        TakesBack,
        "devait être | devrait être | attends | attendez | oups | pardon | désolé | désolée | correction | plutôt | ou plutôt | je voulais dire | voulais dire \
         | je corrige | erreur de frappe | faute de frappe | edit | édit | je veux dire | non attends | zut | mince | en fait",
    ),
    (
        Instead,
        "au lieu de | plutôt que | à la place de | mieux que | est mieux que | est meilleur que | est plus fort que | plus fort que | et non pas",
    ),
    (But, "mais | cependant | pourtant | toutefois"),
    (Before, "avant | avant de jouer"),
    (
        Former,
        "pensais | je pensais | première idée | ma première idée | j'ai pensé | voulais | je voulais | d'abord pensé | tentant \
         | tentante | essayé | j'avais | envisagé | au début | j'ai d'abord | première pensée | ma première pensée | j'avais pensé | j'ai écrit",
    ),
    (Seems, "semble | paraît | semblait | a l'air"),
    (
        Hedge,
        "hésite | hésite entre | j'hésite | j'hésite entre | probablement | sans doute | peut-être | peut être | pas sûr | pas sûre | pourrait | peut-etre | aucune idée | je ne sais pas | sais pas | éventuellement | au hasard",
    ),
    (
        Fails,
        "échoue | faux | fausse | perd | mauvais | mauvaise | erreur | ne marche pas | marche pas | ne va pas | ne gagne pas | ne suffit pas \
         | ne mate pas | ne donne rien | et rien | trop lent | trop lente | réfuté | pas mat | n'est pas mat | gaffe | s'échappe | prématuré \
         | ne fonctionne pas | pas bon | n'est pas bon | ne mène à rien | n'est pas bonne | pas le bon coup | mène à rien | nul | seulement nulle",
    ),
    (Works, "marche | fonctionne | gagne | les noirs perdent"),
    (First, "d'abord mais | mais d'abord"),
    (
        Better,
        "mieux | meilleur | meilleure | correct | bon | est mieux | est meilleur | est correct | le bon coup est | mais d'abord \
         | est plus fort | est la solution | est le bon coup | il faut d'abord | mieux vaut | vaut mieux",
    ),
    (
        Because,
        "parce que | car | à cause de | puisque | parce qu'après",
    ),
    (So, "donc | par conséquent | c'est pourquoi | du coup"),
    (Claim, "joue | je joue | je choisis | coup"),
    (Answer, "réponse | solution | clé | clef"),
    (
        Quits,
        "j'abandonne | jabandonne | je donne ma langue au chat",
    ),
    (
        Else,
        "tout le reste | les autres coups | autre chose | les autres",
    ),
    (
        Aside,
        "hier | partie | semaine | tournoi | adversaire | club | il | elle | perdu | joué | ressemble | était | match",
    ),
    (Tag, "n'est-ce pas | pas vrai"),
    (
        Asks,
        "pourquoi | comment | est-ce que | que | quoi | quel | qui | pourquoi pas | et si | que se passe-t-il | est-ce | que penser de \
         | puis-je | peut-on | qu'en est-il de",
    ),
    (
        Filler,
        "du tout | est | je | j'ai | ma | mon | la | le | les | l | un | une | c'est | ce | ça | il y a | merci | bonjour | salut | oui | d'abord | tout de suite \
         | immédiatement | bien | bon | crois | pense | trouvé | facile | coach | super | bravo | allez | voilà | s'il vous plaît | svp | très \
         | aussi | blancs | noirs | premier | première | sacrifice | double | à la découverte | tiens | prends ça | trop | fort | du tout | au | aux | se",
    ),
];
