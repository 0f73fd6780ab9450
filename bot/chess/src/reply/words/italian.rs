//! Italian words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "re"),
    (Man(Queen), "donna | regina"),
    (Man(Rook), "torre"),
    (Man(Bishop), "alfiere"),
    (Man(Knight), "cavallo"),
    (Man(Pawn), "pedone"),
    (
        Takes,
        "prendo | prendere | mangio | mangiare | catturo | presa | prende | mangia | cattura",
    ),
    (For, "per"),
    (To, "in | a | va in | va | muove in"),
    (On, "del | della | da | di | dalla | dal"),
    (Check, "scacco | con scacco"),
    (
        Mate,
        "matto | scaccomatto | scacco matto | e matto | è matto | ed è matto",
    ),
    (EnPassant, "varco | passaggio | al varco"),
    (With, "con"),
    (Puts, "sacrifico"),
    (Castles(None), "arrocco | arrocca"),
    (Wing(CastlingSide::KingSide), "corto"),
    (Wing(CastlingSide::QueenSide), "lungo"),
    (
        Promotes,
        "promuovo | promuovere | promozione | promuove | diventa",
    ),
    (Any, "qualsiasi | qualunque"),
    (Or, "o | oppure"),
    (If, "se | dopo | in caso di"),
    (
        Then,
        "poi | e | e poi | quindi poi | seguito da | ma poi | allora | minaccia | e ora | dopodiché",
    ),
    (Not, "non | mai | e non | ma non | senza"),
    (No, "no | ah no"),
    (
        TakesBack,
        "doveva essere | dovrebbe essere | aspetta | no aspetta | scusa | scusate | correzione | volevo dire | intendevo | anzi | ops | correggo | edit | errore di battitura \
         | mi sono sbagliato | mi sono sbagliata | pardon | o meglio | o piuttosto | mi correggo | in realtà",
    ),
    (
        Instead,
        "invece di | al posto di | piuttosto che | meglio di | è meglio di | è più forte di | è migliore di | più forte di | anziché",
    ),
    (But, "ma | però | tuttavia | bensì"),
    (Before, "prima di"),
    (
        Former,
        "pensavo | pensavo a | ho pensato | prima idea | la mia prima idea | la prima idea | volevo | volevo giocare | ho considerato | tentante \
         | provato | all'inizio | avevo pensato | il mio primo pensiero | primo pensiero | ho scritto",
    ),
    (Seems, "sembra | sembrava | pare"),
    (
        Hedge,
        "indeciso | indeciso tra | indecisa tra | probabilmente | forse | magari | potrebbe | potrebbe essere | non sono sicuro | non sono sicura | non so | non saprei | nessuna idea | può darsi | probabilmente non",
    ),
    (
        Fails,
        "fallisce | perde | sbagliato | sbagliata | errore | non funziona | non va | non va bene | non vince | non basta | non dà matto | non è matto | non matta | e niente \
         | e nulla | male | cattivo | cattiva | troppo lento | troppo lenta | confutato | scappa | non porta a nulla | non porta a niente | prematuro | solo patta \
         | non è buona | non è giusto | non serve | è un errore",
    ),
    (Works, "funziona | vince | il nero perde"),
    (First, "ma prima | prima però"),
    (
        Better,
        "meglio | giusto | giusta | corretto | corretta | migliore | è meglio | è giusto | è corretto | è migliore | la giusta è | è la soluzione | ma prima \
         | più forte | è più forte | meglio prima | quella giusta è",
    ),
    (
        Because,
        "perché dopo | a causa di | siccome | poiché | per via di",
    ),
    (So, "quindi | perciò | dunque | allora gioco"),
    (Claim, "gioco | io gioco | scelgo | mossa"),
    (Answer, "soluzione | risposta | chiave"),
    (Quits, "mi arrendo"),
    (Else, "tutto il resto | le altre mosse | altre mosse"),
    (
        Aside,
        "ieri | partita | settimana | torneo | avversario | circolo | lui | lei | perso | giocato | simile | era",
    ),
    (Tag, "vero | non è vero | giusto no"),
    (
        Asks,
        "perché | come | cosa | chi | quale | perché non | che ne dite di | che ne dici di | cosa succede | cosa succede dopo | cosa succede se | posso | si può | e se | che succede dopo",
    ),
    (
        Filler,
        "uno | è | io | il | la | lo | i | le | un | una | mia | mio | è | grazie | ciao | sì | prima | subito | immediatamente | credo | penso | bene | buono | buona | per favore | facile \
         | allenatore | dai | forza | prendi questo | molto | anche | bianco | nero | sacrificio | doppio | di scoperta | ora | ecco | solo | mi | si | al | del | della | fatto | risolto | è la | mossa giusta",
    ),
];
