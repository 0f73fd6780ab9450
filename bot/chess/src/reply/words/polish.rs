//! Polish words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "król | króla | królem"),
    (Man(Queen), "hetman | hetmana | hetmanem | królowa"),
    (Man(Rook), "wieża | wieżą | wieżę | wieży"),
    (Man(Bishop), "goniec | gońcem | gońca"),
    (Man(Knight), "skoczek | skoczkiem | skoczka"),
    (Man(Pawn), "pionek | pionkiem | pionka | pion"),
    (Takes, "biję | bić | biorę | zbić | bije | bierze"),
    (To, "w | na | do | idzie na"),
    (On, "z | ze | od"),
    (Check, "szach | z szachem"),
    (
        Mate,
        "mat | szachmat | szach mat | i mat | z matem | i jest mat",
    ),
    (EnPassant, "przelocie"),
    (Puts, "poświęcam"),
    (Castles(None), "roszada"),
    (Wing(CastlingSide::KingSide), "krótka"),
    (Wing(CastlingSide::QueenSide), "długa"),
    (Promotes, "promuję | promuje | promocja | promuje"),
    (Any, "dowolny | cokolwiek | obojętnie"),
    (Or, "lub | albo"),
    (If, "jeśli | jeżeli | po | w razie"),
    (
        Then,
        "potem | i | następnie | a potem | i potem | dalej | ale potem | a teraz | oraz | grożąc",
    ),
    (Not, "a nie | i nie | ale nie | nigdy | bez | nie od razu"),
    (Deny, "nie"),
    (
        TakesBack,
        "miało być | powinno być | miał być | czekaj | nie czekaj | przepraszam | sorry | poprawka | korekta | miałem na myśli | miałam na myśli | chodziło mi o | ups | raczej | to znaczy | znaczy | pomyłka | literówka | edit | edycja | poprawiam | pomyliłem się | pomyliłam się | chwila",
    ),
    (
        Instead,
        "zamiast | jest lepsze niż | jest lepszy niż | niż | lepsze niż | lepszy niż | silniejsze niż",
    ),
    (But, "tylko | ale | jednak | lecz | lecz najpierw"),
    (Before, "przed | zanim"),
    (
        Former,
        "myślałem | myślałam | pierwsza myśl | moja pierwsza myśl | pierwszy pomysł | chciałem | chciałam | najpierw myślałem | najpierw chciałem | rozważałem | rozważałam | kuszące | próbowałem | próbowałam | na początku | napisałem | napisałam",
    ),
    (Seems, "wydaje się | wygląda | wydawało się"),
    (
        Hedge,
        "waham się | waham się między | prawdopodobnie | pewnie | może | być może | chyba nie wiem | możliwe | nie jestem pewien | nie jestem pewna | nie wiem | zgaduję | mógłby | ewentualnie",
    ),
    (
        Fails,
        "źle | błąd | przegrywa | zły | złe | nie działa | nie wychodzi | nie wygrywa | nie matuje | nie daje mata | nie ma mata | nie wystarcza | i nic | nic nie daje | za wolno | zbyt wolno | obalone | ucieka | błędne | błędny | przedwczesne \
         | za wcześnie | tylko remis | nie jest mat | nie jest dobre | nie przechodzi | to błąd | do niczego | nie wystarczy | zawodzi",
    ),
    (Works, "działa | wygrywa | wychodzi | czarne przegrywają"),
    (First, "ale najpierw | ale wcześniej | lecz najpierw"),
    (
        Better,
        "lepsze | lepszy | lepiej | poprawne | poprawny | dobre | właściwe | jest lepsze | jest lepszy | najlepsze | silniejsze | najpierw trzeba | to rozwiązanie | jest poprawne | prawidłowe",
    ),
    (Because, "bo | ponieważ | gdyż | z powodu | przez"),
    (So, "więc | dlatego | zatem | tak więc"),
    (Claim, "gram | wybieram | ruch | mój ruch | zagram"),
    (Answer, "rozwiązanie | odpowiedź | klucz"),
    (Quits, "poddaję się | poddaje sie"),
    (
        Else,
        "wszystko inne | inne ruchy | reszta | pozostałe ruchy",
    ),
    (
        Aside,
        "wczoraj | partia | partii | tydzień | turniej | przeciwnik | klub | on | ona | przegrałem | grałem | zagrał | podobne | było | był",
    ),
    (Tag, "prawda | nieprawdaž | czyż nie"),
    (
        Asks,
        "dlaczego | jak | co | kto | który | czy | dlaczego nie | a co | co jeśli | co się stanie | co się stanie po | co po | czy można | a jeśli | co z",
    ),
    (
        Filler,
        "no tak | no to | i tyle | ja | moje | moja | mój | to | jest | ten | ta | dzięki | dziękuję | cześć | dzień | dobry | tak | najpierw | od razu | natychmiast | myślę | sądzę | uważam | chyba | dobrze | ładnie | proszę | łatwe | trener | dawaj | masz | bardzo | też | białe | czarne \
         | poświęcenie | ofiara | podwójny | z odsłony | teraz | po prostu | się | no | gotowe | znalazłem | znalazłam | mi | oczywiście",
    ),
];
