//! Spanish words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "rey"),
    (Man(Queen), "dama | reina"),
    (Man(Rook), "torre"),
    (Man(Bishop), "alfil"),
    (Man(Knight), "caballo"),
    (Man(Pawn), "peón"),
    (
        Takes,
        "capturar | capturo | comer | tomo | tomar | capturando | como | toma | come | captura",
    ),
    (For, "por"),
    (To, "a | en | va | va a | mueve a"),
    (On, "del | de | desde"),
    (Check, "jaque | con jaque"),
    (Mate, "mate | jaque mate | y mate | es mate | con mate"),
    (With, "con"),
    (Puts, "sacrifico"),
    (Castles(None), "enroque"),
    (Wing(CastlingSide::KingSide), "corto"),
    (Wing(CastlingSide::QueenSide), "largo"),
    (
        Promotes,
        "corono | coronar | coronando | promocionar | corona | promociona | se convierte en",
    ),
    (EnPassant, "paso | al paso"),
    (Any, "cualquiera | cualquier | lo que sea"),
    (Or, "o | u | o bien"),
    (If, "si | tras | después de | en caso de"),
    (
        Then,
        "luego | y | después | entonces | seguido de | y luego | y después | pero luego | amenaza | y ahora",
    ),
    (Not, "nunca | y no | pero no | sin"),
    (Deny, "no"),
    (
        TakesBack,
        "debía ser | debe ser | debería ser | tenía que ser | espera | no espera | perdón | perdona | corrección | quise decir | quería decir | me refiero a | digo | mejor dicho | ups | uy \
         | corrijo | edit | editado | error de tipeo | errata | me equivoqué | lo siento | más bien | en realidad",
    ),
    (
        Instead,
        "en vez de | en lugar de | antes que | mejor que | es mejor que | es más fuerte que | más fuerte que",
    ),
    (But, "pero | sino | sin embargo | aunque"),
    (Before, "antes de | antes"),
    (
        Former,
        "pensé | pensé en | pensaba | primera idea | mi primera idea | quería | quería jugar | consideré | tentador | intenté | al principio \
         | primero pensé | primero pensé en | había pensado | mi primer pensamiento | escribí | iba a jugar",
    ),
    (Seems, "parece | parecía | se ve"),
    (
        Hedge,
        "dudo | dudo entre | probablemente | seguramente | quizás | quizá | tal vez | a lo mejor | podría | podría ser | no estoy seguro | no estoy segura | no sé | ni idea | posiblemente | puede ser",
    ),
    (
        Fails,
        "falla | pierde | malo | mala | error | no funciona | no sirve | no vale | no gana | no da mate | no es mate | no basta | y nada | no da nada \
         | mal | incorrecto | demasiado lento | refutado | escapa | se escapa | fracasa | no es bueno | no es buena | no va | solo tablas | prematuro \
         | no lleva a nada | no es correcto | es un error",
    ),
    (Works, "funciona | gana | sirve | las negras pierden"),
    (First, "pero antes | pero primero"),
    (
        Better,
        "mejor | correcto | correcta | es mejor | es correcto | lo correcto es | la correcta es | es la solución | pero primero \
         | primero hay que | más fuerte | es más fuerte | mejor es",
    ),
    (Because, "porque | por culpa de | debido a | ya que | pues"),
    (
        So,
        "así que | por eso | por tanto | por lo tanto | entonces juego",
    ),
    (Claim, "juego | yo juego | elijo | jugada"),
    (Answer, "solución | respuesta | clave"),
    (Quits, "me rindo"),
    (
        Else,
        "todo lo demás | las demás jugadas | otras jugadas | lo demás",
    ),
    (
        Aside,
        "ayer | partida | semana | torneo | rival | club | él | ella | perdí | jugué | jugó | parecido | era",
    ),
    (Tag, "verdad | no es cierto | no es así"),
    (
        Asks,
        "qué | cómo | por qué | quién | cuál | qué tal | qué pasa | qué pasa si | qué pasa después de | qué pasa con | por qué no | puedo | se puede | y si",
    ),
    (
        Filler,
        "uno | es | yo | mi | el | la | los | lo | un | una | es | gracias | hola | sí | primero | enseguida | de inmediato | inmediatamente | creo | pienso | bien | bueno \
         | por favor | fácil | entrenador | vamos | toma ya | toma eso | venga | muy | también | blancas | negras | sacrificio | doble | a la descubierta | ya | ahora \
         | está | claro | solo | se | me | al | del | listo | resuelto",
    ),
];
