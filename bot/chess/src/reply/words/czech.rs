//! Czech words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "král | králem | krále"),
    (Man(Queen), "dáma | dámou | dámu"),
    (Man(Rook), "věž | věží | věže"),
    (Man(Bishop), "střelec | střelcem | střelce"),
    (Man(Knight), "jezdec | jezdcem | jezdce | kůň"),
    (Man(Pawn), "pěšec | pěšcem | pěšce"),
    (Takes, "beru | brát | vzít | vezmu | bere | berou"),
    (To, "v | na | do | jde na | jde"),
    (On, "z | ze | od"),
    (Check, "šach | s šachem"),
    (
        Mate,
        "mat | šachmat | šach mat | a mat | s matem | a je mat",
    ),
    (EnPassant, "mimochodem"),
    (Puts, "obětuji"),
    (Castles(None), "rošáda"),
    (Wing(CastlingSide::KingSide), "malá"),
    (Wing(CastlingSide::QueenSide), "velká"),
    (Promotes, "proměním | proměňuje | promění | proměna"),
    (Any, "libovolný | cokoli | cokoliv"),
    (Or, "nebo | či | anebo"),
    (If, "když | po | pokud | jestli | v případě"),
    (
        Then,
        "pak | a | potom | následně | a pak | a potom | poté | ale pak | a teď | hrozí | s",
    ),
    (
        Not,
        "a ne | ale ne | nikdy | bez | ne hned | nikoli | nikoliv",
    ),
    (Deny, "ne"),
    (
        TakesBack,
        "mělo být | má být | měl být | počkej | počkat | ne počkej | promiň | promiňte | pardon | oprava | myslel jsem | myslela jsem | chtěl jsem napsat | jejda | ups | vlastně | tedy spíš | spíš | spíše | překlep | edit | opravuji | omlouvám se | spletl jsem se | spletla jsem se | moment",
    ),
    (
        Instead,
        "místo | než | lepší než | je lepší než | silnější než | namísto",
    ),
    (But, "ale | avšak | však | jenže"),
    (Before, "před | předtím než | než zahraju"),
    (
        Former,
        "napadlo | první nápad | můj první nápad | první myšlenka | moje první myšlenka | chtěl | chtěla | chtěl jsem | chtěla jsem | nejdřív jsem chtěl | nejdřív jsem myslel | zvažoval | zvažovala | lákavé | zkoušel | zkoušela | zkusil | původně | napsal | napsala",
    ),
    (Seems, "zdá se | vypadá | vypadalo | zdálo se"),
    (
        Hedge,
        "váhám | váhám mezi | pravděpodobně | nejspíš | možná | snad | mohlo by | mohl by | nejsem si jistý | nejsem si jistá | nevím | netuším | asi nevím | třeba | hádám",
    ),
    (
        Fails,
        "špatně | chyba | prohrává | špatný | špatné | nefunguje | nejde | nevychází | nevyhrává | nestačí | nedává mat | nematuje | není mat | a nic | nic nedává | moc pomalé | příliš pomalé | vyvráceno | uteče | utíká | předčasné | jen remíza | není dobré \
         | není dobrý | selže | selhává | k ničemu | nevede k ničemu | je chyba | naráží na",
    ),
    (Works, "funguje | vyhrává | vychází | černý prohrává"),
    (First, "ale nejdřív | ale nejprve | nejdřív ale"),
    (
        Better,
        "lepší | správně | správné | správný | lépe | je lepší | je správně | je správné | správně je | silnější | je řešení | lepší je",
    ),
    (Because, "protože | kvůli | neboť | jelikož"),
    (So, "takže | proto | tudíž | tak"),
    (Claim, "hraji | hraju | volím | tah | můj tah | zahraju"),
    (Answer, "řešení | odpověď | klíč"),
    (Quits, "vzdávám se | vzdávám to"),
    (Else, "všechno ostatní | jiné tahy | ostatní tahy | zbytek"),
    (
        Aside,
        "včera | partie | týden | turnaj | soupeř | klub | on | ona | prohrál | hrál | podobné | bylo | byl",
    ),
    (Tag, "že jo | že ano | viďte | viď"),
    (
        Asks,
        "proč | jak | co | kdo | který | proč ne | co když | co se stane | co se stane po | a co | co po | můžu | mohu | lze",
    ),
    (
        Filler,
        "no tak | no | tak určitě | je | já | moje | můj | to | ten | ta | díky | děkuji | ahoj | dobrý | den | ano | nejdřív | nejprve | hned | okamžitě | myslím | asi | dobře | hezké | prosím | lehké | trenér | tak jo | na | velmi | taky | bílý | černý | oběť | dvojitý | odtažný | teď | jen | jenom \
         | prostě | se | si | jsem | je to | hotovo | mám | určitě",
    ),
];
