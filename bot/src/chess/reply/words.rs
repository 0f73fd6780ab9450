//! The words members use for men and moves, in English and, for the main ones, in the other languages.

use shakmaty::{
    CastlingSide,
    Role::{self, Bishop, King, Knight, Pawn, Queen, Rook},
};

/// What a word means to the reader.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Word {
    /// A man.
    Man(Role),
    /// Capturing.
    Takes,
    /// Capturing, between a man and a square; begins a question or a request elsewhere.
    For,
    /// Going somewhere.
    To,
    /// Standing somewhere.
    On,
    /// Check is claimed.
    Check,
    /// Mate is claimed.
    Mate,
    /// Castling, perhaps with the side.
    Castles(Option<CastlingSide>),
    /// A side of castling.
    Wing(CastlingSide),
    /// Belongs to a wing word: "king side".
    Side,
    /// Promoting.
    Promotes,
    /// En passant; says nothing new.
    EnPassant,
    /// Whatever the defence.
    Any,
    /// Another move instead of the last one.
    Or,
    /// What follows is a variation.
    If,
    /// The next move in order.
    Then,
    /// The next move is not meant.
    Not,
    /// What was written before is taken back.
    TakesBack,
    /// A move fails.
    Fails,
    /// A move does what it should.
    Works,
    /// A reason follows.
    Because,
    /// An answer is announced.
    Claim,
    /// The game or another day is spoken of, or it is supposed.
    Aside,
    /// A question is asked.
    Asks,
    /// Says nothing to the chess.
    Filler,
    /// Not known.
    Other,
}

/// The meaning of a word in lower case.
pub(super) fn meaning(word: &str) -> Word {
    use Word::*;
    match word {
        // Men: English, German, French, Spanish, Italian, Portuguese, Dutch, Russian, Polish, Czech,
        // Hungarian, with the cases in which they stand in a sentence.
        "king" | "könig" | "koenig" | "konig" | "roi" | "rey" | "re" | "rei" | "koning"
        | "король" | "короля" | "королём" | "королем" | "król" | "krol" | "króla" | "królem"
        | "král" | "kral" | "králem" | "krále" | "király" | "királlyal" | "királyt" => {
            Man(King)
        }
        "queen" | "dame" | "dama" | "reina" | "donna" | "regina" | "rainha" | "koningin"
        | "ферзь" | "ферзя" | "ферзём" | "ферзем" | "hetman" | "hetmana" | "hetmanem"
        | "królowa" | "dáma" | "dámou" | "dámu" | "vezér" | "vezer" | "vezérrel" | "vezért" => {
            Man(Queen)
        }
        "rook" | "turm" | "tour" | "torre" | "toren" | "ладья" | "ладьёй" | "ладьей" | "ладью"
        | "ладьи" | "wieża" | "wieza" | "wieżą" | "wieżę" | "wieży" | "věž" | "věží" | "věže"
        | "bástya" | "bastya" | "bástyával" | "bástyát" => Man(Rook),
        "bishop" | "läufer" | "laeufer" | "laufer" | "fou" | "alfil" | "alfiere" | "bispo"
        | "loper" | "слон" | "слоном" | "слона" | "goniec" | "gońcem" | "gońca" | "střelec"
        | "střelcem" | "střelce" | "futó" | "futo" | "futóval" | "futót" => Man(Bishop),
        "knight" | "horse" | "springer" | "cavalier" | "caballo" | "cavallo" | "cavalo"
        | "paard" | "конь" | "конём" | "конем" | "коня" | "skoczek" | "skoczkiem" | "skoczka"
        | "jezdec" | "jezdcem" | "jezdce" | "huszár" | "huszar" | "huszárral" | "huszárt" => {
            Man(Knight)
        }
        "pawn" | "bauer" | "bauern" | "pion" | "peón" | "peon" | "pedone" | "peão" | "peao"
        | "пешка" | "пешкой" | "пешку" | "пешки" | "pionek" | "pionkiem" | "pionka" | "pěšec"
        | "pěšcem" | "pěšce" | "gyalog" | "gyaloggal" | "gyalogot" => Man(Pawn),

        "takes" | "take" | "taking" | "captures" | "capture" | "x" | "schlägt" | "schlaegt"
        | "schlagt" | "nimmt" | "prend" | "captura" | "toma" | "come" | "mangia" | "prende"
        | "cattura" | "slaat" | "neemt" | "бьёт" | "бьет" | "берёт" | "берет" | "bije"
        | "bierze" | "bere" | "üti" | "üt" | "uti" => Takes,
        "por" => For,
        "to" | "goes" | "moves" | "move" | "nach" | "auf" | "en" | "a" | "à" | "para" | "vers"
        | "in" | "va" | "naar" | "op" | "на" | "na" | "do" | "zieht" | "geht" | "gaat" | "sur"
        | "до" => To,
        "on" | "from" | "von" | "de" | "da" | "van" | "с" | "z" | "ze" | "at" | "vom" => On,
        "check" | "ch" | "schach" | "échec" | "echec" | "jaque" | "scacco" | "xeque" | "schaak"
        | "шах" | "szach" | "šach" | "sakk" => Check,
        "mate" | "checkmate" | "mates" | "checkmates" | "matt" | "schachmatt" | "mat" | "matto"
        | "scaccomatto" | "schaakmat" | "мат" | "szachmat" | "šachmat" | "mattot" => Mate,
        "castles" | "castle" | "castling" | "rochade" | "rochiert" | "roque" | "arrocco"
        | "arrocca" | "rokade" | "rocheert" | "рокировка" | "roszada" | "rošáda" | "rosada"
        | "sánc" | "sáncol" | "enroque" => Castles(None),
        "short" | "kingside" | "kurz" | "kurze" | "petit" | "corto" | "corta" | "curto"
        | "pequeno" | "kort" | "korte" | "короткая" | "krótka" | "malá" | "rövid" => {
            Wing(CastlingSide::KingSide)
        }
        "long" | "queenside" | "lang" | "lange" | "grand" | "largo" | "larga" | "lungo"
        | "longo" | "grande" | "длинная" | "długa" | "velká" | "hosszú" => {
            Wing(CastlingSide::QueenSide)
        }
        "side" => Side,
        "promotes" | "promote" | "promoting" | "promotion" | "becomes" | "becoming" | "makes"
        | "making" | "underpromotes" | "queening" => Promotes,
        "ep" | "e.p" | "passant" => EnPassant,
        "any" | "anything" | "whatever" | "~" | "beliebig" | "cualquiera" | "qualsiasi"
        | "qualquer" | "willekeurig" | "dowolny" | "любой" | "libovolný" | "bármi" => Any,
        "or" | "oder" | "ou" | "lub" | "nebo" | "vagy" | "или" | "of" | "o" => Or,
        "if" | "wenn" | "falls" | "si" | "als" | "если" | "jeśli" | "když" | "ha" | "after" => {
            If
        }
        "then" | "and" | "followed" | "next" | "dann" | "und" | "puis" | "et" | "luego" | "y"
        | "poi" | "e" | "depois" | "dan" | "потом" | "и" | "potem" | "i" | "pak" | "majd"
        | "és" | "with" | "threat" | "threatening" | "threatens" | "by" => Then,
        "not" | "nicht" | "nein" | "pas" | "no" | "non" | "nee" | "нет" | "não" | "niet" | "не"
        | "nie" | "nem" | "don't" | "dont" | "doesn't" | "doesnt" | "isn't" | "isnt" | "cannot"
        | "can't" | "cant" | "never" | "didn't" | "didnt" | "wouldn't" | "instead" | "without" => {
            Not
        }
        "wait" | "oops" | "whoops" | "sorry" | "correction" | "scratch" | "meant" | "mean"
        | "rather" | "ups" | "korrektur" | "quatsch" | "meinte" | "vielmehr" | "attends"
        | "oups" | "pardon" | "espera" | "perdón" | "perdon" | "aspetta" | "scusa" | "desculpe"
        | "wacht" | "bedoel" | "подожди" | "ой" | "czekaj" | "przepraszam" | "počkej" | "várj" => {
            TakesBack
        }
        "fails" | "wrong" | "falsch" | "scheitert" | "échoue" | "falla" | "fallisce" | "faalt" => {
            Fails
        }
        "work" | "works" | "geht's" | "funktioniert" | "marche" | "funciona" | "funziona"
        | "werkt" => Works,
        "because" | "cause" | "since" | "due" | "wegen" | "weil" => Because,
        "answer" | "solution" | "key" | "play" | "lösung" | "antwort" | "spiele" | "joue"
        | "solución" | "solucion" | "juego" | "soluzione" | "gioco" | "solução" | "jogo"
        | "oplossing" | "speel" | "ответ" | "играю" | "решение" | "gram" | "rozwiązanie"
        | "hraji" | "hraju" | "řešení" | "megoldás" | "lépek" | "réponse" | "respuesta"
        | "sealed" | "submit" | "final" => Claim,
        "yesterday" | "week" | "game" | "games" | "played" | "last" | "tournament" | "opponent"
        | "he" | "she" | "they" | "him" | "her" | "opening" | "was" | "were" | "had" | "did"
        | "club" | "round" | "against" | "tried" | "thought" | "video" | "book" | "remember"
        | "ago" | "would've" | "tomorrow" | "today" | "online" | "board" | "clock" | "seat"
        | "line" | "defence" | "defense" | "attack" | "gambit" | "variation" | "partie"
        | "gestern" | "hier" | "ayer" | "ieri" | "ontem" | "gisteren" | "вчера" | "wczoraj"
        | "včera" | "tegnap" | "similar" | "like" | "likes" | "could" | "loses" | "maybe"
        | "might" | "perhaps" | "looks" | "seems" | "tempting" => Aside,
        "what" | "why" | "how" | "who" | "when" | "where" | "which" | "does" | "is" | "are"
        | "can" | "should" | "anyone" | "someone" | "warum" | "wie" | "pourquoi" | "perché"
        | "waarom" | "почему" | "dlaczego" | "proč" | "miért" | "qué" | "que" | "wäre" => {
            Asks
        }
        "hi" | "hello" | "hey" | "ok" | "okay" | "hmm" | "hm" | "easy" | "finally" | "got"
        | "it" | "thanks" | "thank" | "you" | "coach" | "lol" | "haha" | "yes" | "yay" | "nice"
        | "good" | "morning" | "evening" | "afternoon" | "cool" | "please" | "pls" | "so"
        | "my" | "mine" | "the" | "an" | "his" | "its" | "white" | "black" | "id" | "i'd"
        | "i'll" | "ill" | "i'm" | "im" | "it's" | "that's" | "thats" | "think" | "found"
        | "this" | "one" | "first" | "mit" | "ich" | "meine" | "die" | "der" | "das" | "den"
        | "dem" | "ist" | "je" | "ma" | "la" | "le" | "el" | "mi" | "il" | "mia" | "minha"
        | "ik" | "mijn" | "het" | "я" | "мой" | "ja" | "moje" | "moja" | "az" | "én" | "wins"
        | "winning" | "win" | "forced" | "here" | "well" | "uh" | "um" | "oh" | "ah" | "again"
        | "second" | "try" | "guess" | "go" | "going" | "will" | "would" | "now" | "ready"
        | "done" | "solved" | "boom" | "wow" | "eh" | "double" | "dbl" | "discovered" | "dis"
        | "sacrifice" | "sac" | "everyone" | "all" | "team" | "mr" | "ms" | "mrs" | "sir" | "s"
        | "m" | "ll" | "d" => Filler,
        _ => Other,
    }
}
