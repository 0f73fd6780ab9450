//! The words members use for men and moves, in English and, for the main ones, in the other languages.

use shakmaty::{
    CastlingSide,
    Role::{self, Bishop, King, Knight, Pawn, Queen, Rook},
};

use crate::chess::judge::Language;

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
    /// En passant.
    EnPassant,
    /// With which man: "with the queen".
    With,
    /// A man is put somewhere: "sac the queen on h7".
    Puts,
    /// The king's or the queen's one of two like men: "queen's knight".
    WingOf(CastlingSide),
    /// One of two like men in one word: "Königsspringer".
    WingMan(CastlingSide, Role),
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
        "queen" | "quen" | "qween" | "queeen" | "dame" | "dama" | "reina" | "donna" | "regina"
        | "rainha" | "koningin" | "ферзь" | "ферзя" | "ферзём" | "ферзем" | "hetman"
        | "hetmana" | "hetmanem" | "królowa" | "dáma" | "dámou" | "dámu" | "vezér" | "vezer"
        | "vezérrel" | "vezért" | "vezérré" => Man(Queen),
        "rook" | "rokk" | "rooke" | "turm" | "tour" | "torre" | "toren" | "ладья" | "ладьёй"
        | "ладьей" | "ладью" | "ладьи" | "wieża" | "wieza" | "wieżą" | "wieżę" | "wieży"
        | "věž" | "věží" | "věže" | "bástya" | "bastya" | "bástyával" | "bástyát" => {
            Man(Rook)
        }
        "bishop" | "bishup" | "bisop" | "läufer" | "laeufer" | "laufer" | "fou" | "alfil"
        | "alfiere" | "bispo" | "loper" | "слон" | "слоном" | "слона" | "goniec" | "gońcem"
        | "gońca" | "střelec" | "střelcem" | "střelce" | "futó" | "futo" | "futóval" | "futót" => {
            Man(Bishop)
        }
        "knight" | "knigth" | "kinght" | "knigt" | "knite" | "horse" | "springer" | "cavalier"
        | "caballo" | "cavallo" | "cavalo" | "paard" | "конь" | "конём" | "конем" | "коня"
        | "skoczek" | "skoczkiem" | "skoczka" | "jezdec" | "jezdcem" | "jezdce" | "huszár"
        | "huszar" | "huszárral" | "huszárt" => Man(Knight),
        "pawn" | "pwan" | "bauer" | "bauern" | "pion" | "peón" | "peon" | "pedone" | "peão"
        | "peao" | "пешка" | "пешкой" | "пешку" | "пешки" | "pionek" | "pionkiem" | "pionka"
        | "pěšec" | "pěšcem" | "pěšce" | "gyalog" | "gyaloggal" | "gyalogot" => Man(Pawn),

        "takes" | "take" | "taking" | "captures" | "capture" | "x" | "schlägt" | "schlaegt"
        | "schlagt" | "nimmt" | "prend" | "captura" | "toma" | "come" | "mangia" | "prende"
        | "cattura" | "slaat" | "neemt" | "бьёт" | "бьет" | "берёт" | "берет" | "bije"
        | "bierze" | "bere" | "üti" | "üt" | "uti" => Takes,
        "schlagen" | "schlage" | "schlag" | "nehmen" | "nehme" | "nimm" | "prends" | "prendre"
        | "prenez" | "capturar" | "capturo" | "comer" | "tomo" | "tomar" | "prendo"
        | "prendere" | "mangio" | "mangiare" | "catturo" | "capturando" | "slaan" | "sla"
        | "neem" | "nemen" | "бью" | "бить" | "беру" | "взять" | "бей" | "biję" | "bić"
        | "biorę" | "zbić" | "beru" | "brát" | "vzít" | "vezmu" | "ütök" | "ütöm" | "ütni"
        | "leütöm" | "leüti" | "grab" | "grabs" | "eats" | "eat" => Takes,
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
        "promotes"
        | "promote"
        | "promoting"
        | "becomes"
        | "becoming"
        | "makes"
        | "making"
        | "make"
        | "become"
        | "promoted"
        | "underpromotes"
        | "underpromote"
        | "underpromoting"
        | "underpromotion"
        | "queening"
        | "umwandlung"
        | "umwandeln"
        | "verwandelt"
        | "verwandle"
        | "wird"
        | "unterverwandlung"
        | "promotion"
        | "promeut"
        | "promouvoir"
        | "devient"
        | "corona"
        | "corono"
        | "coronar"
        | "coronando"
        | "promociona"
        | "promocionar"
        | "promuovo"
        | "promuove"
        | "promuovere"
        | "promozione"
        | "diventa"
        | "promovo"
        | "promove"
        | "promover"
        | "promovendo"
        | "vira"
        | "promoveren"
        | "promoveert"
        | "promoveer"
        | "promotie"
        | "wordt"
        | "превращаю"
        | "превращается"
        | "превращение"
        | "promuję"
        | "promuje"
        | "promocja"
        | "proměna"
        | "proměním"
        | "proměňuje"
        | "átváltozik"
        | "átváltoztatom"
        | "beváltom"
        | "bevált" => Promotes,
        "ep" | "e.p" | "passant" | "vorbeigehen" | "vorübergehen" | "paso" | "passagem"
        | "varco" | "passaggio" | "voorbijgaan" | "проходе" | "przelocie" | "mimochodem"
        | "geçerken" => EnPassant,
        "with" | "mit" | "avec" | "con" | "com" | "using" => With,
        "sac" | "sacs" | "sack" | "sacrifice" | "sacrifices" | "put" | "place" | "opfere"
        | "sacrifie" | "sacrifico" | "offer" | "poświęcam" | "obětuji" | "жертвую" => {
            Puts
        }
        "king's" | "kings" => WingOf(CastlingSide::KingSide),
        "queen's" | "queens" => WingOf(CastlingSide::QueenSide),
        "königsspringer" => WingMan(CastlingSide::KingSide, Knight),
        "königsläufer" => WingMan(CastlingSide::KingSide, Bishop),
        "königsturm" => WingMan(CastlingSide::KingSide, Rook),
        "damenspringer" => WingMan(CastlingSide::QueenSide, Knight),
        "damenläufer" => WingMan(CastlingSide::QueenSide, Bishop),
        "damenturm" => WingMan(CastlingSide::QueenSide, Rook),
        "any" | "anything" | "whatever" | "~" | "beliebig" | "cualquiera" | "qualsiasi"
        | "qualquer" | "willekeurig" | "dowolny" | "любой" | "libovolný" | "bármi" => Any,
        "or" | "oder" | "ou" | "lub" | "nebo" | "vagy" | "или" | "of" | "o" => Or,
        "if" | "wenn" | "falls" | "si" | "als" | "если" | "jeśli" | "když" | "ha" | "after" => {
            If
        }
        "then" | "and" | "followed" | "next" | "dann" | "und" | "puis" | "et" | "luego" | "y"
        | "poi" | "e" | "depois" | "dan" | "потом" | "и" | "potem" | "i" | "pak" | "majd"
        | "és" | "threat" | "threatening" | "threatens" | "by" => Then,
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
        | "this" | "one" | "first" | "ich" | "meine" | "die" | "der" | "das" | "den" | "dem"
        | "ist" | "je" | "ma" | "la" | "le" | "el" | "mi" | "il" | "mia" | "minha" | "ik"
        | "mijn" | "het" | "я" | "мой" | "ja" | "moje" | "moja" | "az" | "én" | "wins"
        | "winning" | "win" | "forced" | "here" | "well" | "uh" | "um" | "oh" | "ah" | "again"
        | "second" | "try" | "guess" | "go" | "going" | "will" | "would" | "now" | "ready"
        | "done" | "solved" | "boom" | "wow" | "eh" | "double" | "dbl" | "discovered" | "dis"
        | "disc" | "everyone" | "all" | "team" | "mr" | "ms" | "mrs" | "sir" | "s" | "m" | "ll"
        | "d" => Filler,
        _ => Other,
    }
}

/// The meaning of a word that only one language gives it.
pub(super) fn meaning_in(language: Language, word: &str) -> Option<Word> {
    match (language, word) {
        (Language::Turkish, word) => turkish(word),
        (Language::Dutch, "met") => Some(Word::With),
        (Language::Spanish, "como") | (Language::Italian, "presa") => Some(Word::Takes),
        (Language::Spanish | Language::Italian, "al") => Some(Word::Filler),
        (Language::Polish, "w") => Some(Word::To),
        (Language::Hungarian, "menet" | "közben") => Some(Word::EnPassant),
        (Language::Hungarian, "egy") => Some(Word::Filler),
        (Language::German, "ein" | "eine" | "einen" | "einem" | "einer") => Some(Word::Filler),
        (Language::French, "un" | "une") => Some(Word::Filler),
        (Language::French, "du") => Some(Word::On),
        (Language::Spanish | Language::Italian, "del" | "della") => Some(Word::On),
        (Language::Spanish | Language::Italian, "un" | "una" | "uno") => Some(Word::Filler),
        (Language::Portuguese, "um" | "uma") => Some(Word::Filler),
        (Language::Dutch, "een") => Some(Word::Filler),
        (Language::Portuguese, "em") | (Language::Dutch, "tot") => Some(Word::To),
        (Language::Russian, "в") | (Language::Czech, "v") => Some(Word::To),
        _ => None,
    }
}

/// The meaning of a Turkish word in small letters, with the endings a man takes in a sentence.
fn turkish(word: &str) -> Option<Word> {
    use Word::*;
    Some(match word {
        "şah" | "sah" | "şahı" | "şahla" | "şahım" => Man(King),
        "vezir" | "veziri" | "vezirle" | "vezirim" | "vezire" => Man(Queen),
        "kale" | "kaleyi" | "kaleyle" | "kalem" | "kaleye" => Man(Rook),
        "fil" | "fili" | "fille" | "filim" | "file" => Man(Bishop),
        "at" | "atı" | "atla" | "atım" | "ata" => Man(Knight),
        "piyon" | "piyonu" | "piyonla" | "piyonum" | "er" => Man(Pawn),
        "alır" | "al" | "alıyor" | "alırım" | "alıyorum" | "alırsa" | "yer" | "yerim" | "yiyor"
        | "almak" | "alma" => Takes,
        "gider" | "git" | "oyna" | "oynar" | "gidiyor" | "ye" | "ya" => To,
        "mat" | "şahmat" | "sahmat" => Mate,
        "rok" => Castles(None),
        "kısa" | "kisa" | "küçük" => Wing(CastlingSide::KingSide),
        "uzun" | "büyük" => Wing(CastlingSide::QueenSide),
        "terfi" | "olur" | "çıkar" | "çıkarım" | "yap" | "yaparım" => Promotes,
        "geçerken" => EnPassant,
        "veya" | "yoksa" => Or,
        "eğer" => If,
        "ve" | "sonra" | "ardından" => Then,
        "değil" | "hayır" | "yok" | "degil" | "hayir" => Not,
        "dur" | "bekle" | "pardon" | "düzeltme" | "özür" => TakesBack,
        "olmaz" | "olmuyor" | "yanlış" => Fails,
        "çünkü" | "cunku" => Because,
        "cevap" | "cevabım" | "oynarım" | "çözüm" | "cevabim" => Claim,
        "belki" => Aside,
        "neden" | "niye" | "nasıl" | "mi" | "mı" | "mu" | "mü" | "ne" => Asks,
        "bence" | "hocam" | "kolay" | "evet" | "çok" | "bu" | "bir" | "ile" | "da" | "de" | "i"
        | "ı" | "teşekkürler" | "tamam" | "benim" | "önce" => Filler,
        _ => return None,
    })
}
