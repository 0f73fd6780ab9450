//! German words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "könig | koenig"),
    (Man(Queen), "dame"),
    (Man(Rook), "turm"),
    (Man(Bishop), "läufer | laeufer"),
    (Man(Knight), "springer | pferd"),
    (Man(Pawn), "bauer | bauern"),
    (
        Takes,
        "schlagen | schlage | schlag | nehmen | nehme | nimm | schlägt | schlaegt | nimmt",
    ),
    (To, "nach | auf | zieht | geht | zieht nach | geht nach"),
    (On, "an | von | vom"),
    (Check, "schach | mit schach"),
    (
        Mate,
        "matt | schachmatt | mit matt | ist matt | und matt | setzt matt",
    ),
    (With, "mit"),
    (Puts, "opfere"),
    (WingMan(CastlingSide::KingSide, Knight), "königsspringer"),
    (WingMan(CastlingSide::KingSide, Bishop), "königsläufer"),
    (WingMan(CastlingSide::KingSide, Rook), "königsturm"),
    (WingMan(CastlingSide::QueenSide, Knight), "damenspringer"),
    (WingMan(CastlingSide::QueenSide, Bishop), "damenläufer"),
    (WingMan(CastlingSide::QueenSide, Rook), "damenturm"),
    (Castles(None), "rochade | rochiert"),
    (Wing(CastlingSide::KingSide), "kurz | kurze"),
    (Wing(CastlingSide::QueenSide), "lang | lange"),
    (
        Promotes,
        "umwandeln | verwandelt | verwandle | wird | unterverwandlung | umwandlung | wird zur | wird zum",
    ),
    (EnPassant, "vorbeigehen | vorübergehen | im vorbeigehen"),
    (Any, "beliebig | egal | egal was"),
    (Or, "oder"),
    (If, "wenn | falls | nach dem zug"),
    (
        Then,
        "dann | und | und dann | danach | gefolgt von | aber dann | droht | und jetzt | jetzt",
    ),
    (
        Not,
        "nicht | und nicht | aber nicht | kein | keinesfalls | nie",
    ),
    (No, "nein | nö | ne"),
    (
        TakesBack,
        "sollte sein | gemeint war | war gemeint | ups | upps | hoppla | korrektur | quatsch | meinte | ich meinte | ich meine | vielmehr | besser gesagt | moment \
         | warte | nein warte | halt | sorry | entschuldigung | verzeihung | tippfehler | vertippt | korrigiere | streiche das \
         | doch lieber | lieber | edit | sollte heißen | soll heißen | quatsch nein | ach nein | doch nicht | ich korrigiere",
    ),
    (
        Instead,
        "statt | anstatt | anstelle von | statt sofort | besser als | ist besser als | ist stärker als | stärker als | und nicht sofort",
    ),
    (But, "aber | jedoch | sondern | allerdings | doch"),
    (Before, "bevor | vor"),
    (
        Former,
        "dachte | dachte zuerst | erster gedanke | mein erster gedanke | wollte | wollte erst | zuerst wollte ich | überlegte \
         | erste idee | meine erste idee | verlockend | versucht | hatte | hätte | schrieb | gedacht",
    ),
    (Seems, "scheint | sieht | wirkt | sah | schien"),
    (
        Hedge,
        "schwanke | schwanke zwischen | wahrscheinlich | vermutlich | vielleicht | eventuell | möglicherweise | könnte | nicht sicher | unsicher | keine ahnung | weiß nicht | weiss nicht \
         | evtl | womöglich | geraten | bin mir nicht sicher",
    ),
    (
        Fails,
        "falsch | scheitert | verliert | schlecht | fehler | schlechter zug | geht nicht | funktioniert nicht | klappt nicht \
         | reicht nicht | bringt nichts | und nichts | zu langsam | widerlegt | kein matt | nicht matt | nur remis | patzer | entkommt \
         | verfrüht | läuft ins leere | gewinnt nicht | ist nicht gut | nicht gut | nützt nichts | führt zu nichts | setzt nicht matt \
         | ist kein matt | nicht richtig | ging nicht | zu früh",
    ),
    (
        Works,
        "geht's | funktioniert | klappt | gewinnt | schwarz verliert",
    ),
    (First, "aber zuerst | aber erst | zuerst aber"),
    (
        Better,
        "besser | richtig | stärker | ist besser | ist richtig | richtig ist | besser ist | stärker ist | stattdessen | aber zuerst \
         | kommt zuerst | ist die lösung | ist der schlüssel | erst kommt | die richtige lösung ist | ist stärker",
    ),
    (Because, "wegen | weil | denn | da dann"),
    (So, "also | deshalb | daher | darum | somit | folglich"),
    (Claim, "spiele | ich spiele | ziehe | nehme | wähle"),
    (Answer, "lösung | antwort | schlüsselzug | schlüssel"),
    (Quits, "ich gebe auf | gebe auf | ich geb auf | geb auf"),
    (
        Else,
        "alles andere | andere züge | jeder andere zug | der rest",
    ),
    (
        Aside,
        "partie | gestern | letzte | turnier | gegner | er | sie | verein | war | heute | morgen | gespielt | verloren | ähnlich",
    ),
    (Tag, "oder nicht | nicht wahr | stimmts | stimmt das"),
    (
        Asks,
        "warum | wie | wieso | weshalb | wäre | was | wer | wo | welcher | geht das | was ist mit | was passiert nach \
         | was passiert | wie wäre | wie wäre es mit | kann | kann ich | darf | soll | warum nicht | wieso nicht | oder nicht",
    ),
    (
        Filler,
        "einem | einer | ist | ich | meine | mein | die | der | das | den | dem | ein | eine | einen | es | hallo | danke | bitte | ja | zuerst | erst | sofort \
         | gleich | gut | schön | super | toll | glaube | denke | bin | mir | sicher | so | zu | zum | zur | nur | auch | noch | wohl \
         | einfach | klar | natürlich | weiß | schwarz | zug | doppelschach | opfer | abzugsschach | guten | abend | tag | trainer | fertig \
         | geschafft | gefunden | gelöst | na los | komm schon | los | nimm das | bitteschön | kein problem | ganz | sehr | opfert | erzwungen",
    ),
];
