//! Hungarian words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "király | királlyal | királyt"),
    (Man(Queen), "vezérré | vezér | vezérrel | vezért"),
    (Man(Rook), "bástya | bástyával | bástyát"),
    (Man(Bishop), "futó | futóval | futót"),
    (Man(Knight), "huszár | huszárral | huszárt | ló"),
    (Man(Pawn), "gyalog | gyaloggal | gyalogot"),
    (Takes, "ütök | ütni | leütöm | leüti | üti | üt | ütöm"),
    (Check, "sakk | sakkal"),
    (Mate, "matt | sakkmatt | és matt | mattot ad | mattot"),
    (EnPassant, "menet | közben"),
    (Castles(None), "sánc | sáncol"),
    (Wing(CastlingSide::KingSide), "rövid"),
    (Wing(CastlingSide::QueenSide), "hosszú"),
    (
        Promotes,
        "átváltoztatom | beváltom | bevált | átváltozik | átváltozás",
    ),
    (Any, "bármi | bármit | mindegy"),
    (Or, "vagy"),
    (If, "ha"),
    (
        Then,
        "majd | és | aztán | utána | és aztán | azután | de aztán | és most",
    ),
    (
        Not,
        "és nem | de nem | soha | ne | nem rögtön | nem azonnal",
    ),
    (Deny, "nem"),
    (
        TakesBack,
        "akart lenni | ra gondoltam | re gondoltam | akartam írni | várj | nem várj | bocs | bocsánat | elnézést | javítás | úgy értettem | azt akartam írni | hoppá | javítom | inkább | elírás | elírtam | illetve | pontosabban | edit | helyesbítek | mégsem | jobban mondva | pardon",
    ),
    (Instead, "mint | jobb mint | erősebb mint"),
    (Unlike, "helyett"),
    (But, "de | azonban | viszont | hanem"),
    (Before, "előbb mint"),
    (
        Former,
        "jutott eszembe | gondoltam | először gondoltam | arra gondoltam | először arra gondoltam | első gondolatom | az első gondolatom | első ötletem | az első ötletem | akartam | először akartam | fontolgattam | csábító | próbáltam | eredetileg | írtam",
    ),
    (Seems, "tűnik | látszik | tűnt | jónak tűnik"),
    (
        Hedge,
        "habozom | vacillálok | valószínűleg | talán | esetleg | lehet | lehet hogy | nem vagyok biztos | nem biztos | nem tudom | fogalmam sincs | tippelek | lehetne",
    ),
    (
        Fails,
        "rossz | hiba | veszít | hibás | nem működik | nem megy | nem jó | nem nyer | nem ad mattot | nem matt | nem elég | és semmi | nem ad semmit | túl lassú | cáfolja | megszökik | elszökik | elmenekül | korai | csak döntetlen | nem vezet sehova | nem helyes | bukik | megbukik",
    ),
    (Works, "működik | nyer | megy | sötét veszít"),
    (First, "de előbb | de először"),
    (
        Better,
        "jobb | helyes | erősebb | a helyes | jó | a jó lépés | előbb jön | a megoldás | legjobb | a jobb | helyesen",
    ),
    (Because, "mert | miatt | hiszen | ugyanis | mivel"),
    (So, "tehát | ezért | így | szóval"),
    (Claim, "lépek | lépésem | választom | játszom"),
    (
        Answer,
        "megoldás | válasz | megoldásom | válaszom | kulcs | a megoldás",
    ),
    (Quits, "feladom"),
    (Else, "minden más | más lépések | a többi"),
    (
        Aside,
        "tegnap | játszma | hét | verseny | ellenfél | klub | ő | vesztettem | hasonló | volt",
    ),
    (Tag, "ugye | igaz | nemde"),
    (
        Asks,
        "miért | hogyan | hogy | mi | ki | melyik | miért nem | mi van | mi van ha | mi történik | mi a helyzet | mi lesz | lehet-e | és ha | jó-e | mi történik ha",
    ),
    (
        Filler,
        "egy | az | a | én | egy | ez | köszönöm | szia | igen | először | előbb | rögtön | azonnal | szerintem | gondolom | hiszem | szép | kérem | könnyű | edző | gyerünk | nesze | nagyon | is | világos | sötét | áldozat | kettős | most | csak | egyszerűen | kész | megvan | megtaláltam | után | persze",
    ),
];
