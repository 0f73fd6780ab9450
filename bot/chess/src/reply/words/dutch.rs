//! Dutch words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "koning"),
    (Man(Queen), "dame | koningin"),
    (Man(Rook), "toren"),
    (Man(Bishop), "loper"),
    (Man(Knight), "paard"),
    (Man(Pawn), "pion"),
    (Takes, "slaan | sla | neem | nemen | slaat | neemt"),
    (To, "tot | naar | op | gaat | gaat naar"),
    (On, "van | vanaf"),
    (Check, "schaak | met schaak"),
    (
        Mate,
        "mat | schaakmat | en mat | is mat | en schaakmat | met mat",
    ),
    (EnPassant, "voorbijgaan"),
    (With, "met"),
    (Castles(None), "rokade | rocheert"),
    (Wing(CastlingSide::KingSide), "kort | korte"),
    (Wing(CastlingSide::QueenSide), "lang | lange"),
    (
        Promotes,
        "promoveren | promoveer | promotie | wordt | promoveert",
    ),
    (Any, "willekeurig | maakt niet uit"),
    (Or, "of | ofwel"),
    (If, "als | na | in geval van"),
    (
        Then,
        "dan | en | daarna | en dan | gevolgd door | maar dan | vervolgens | dreigt | en nu",
    ),
    (Not, "niet | geen | nooit | en niet | maar niet | zonder"),
    (No, "nee"),
    (
        TakesBack,
        "moest zijn | had moeten zijn | wacht | nee wacht | bedoel | ik bedoel | ik bedoelde | bedoelde | sorry | oeps | correctie | of liever | liever | pardon | typfout | tikfout | edit | ik corrigeer | moet zijn \
         | toch niet | of beter",
    ),
    (
        Instead,
        "in plaats van | beter dan | is beter dan | is sterker dan | sterker dan | eerder dan",
    ),
    (But, "maar | echter"),
    (Before, "voordat | voor"),
    (
        Former,
        "dacht | dacht eerst | dacht eerst aan | eerste gedachte | mijn eerste gedachte | wilde | wilde eerst | overwoog | verleidelijk | geprobeerd | eerste idee | mijn eerste idee | schreef | dacht aan | had gedacht",
    ),
    (Seems, "lijkt | leek | schijnt"),
    (
        Hedge,
        "twijfel | twijfel tussen | waarschijnlijk | misschien | wellicht | mogelijk | zou kunnen | niet zeker | weet niet | weet ik niet | weet het niet | geen idee | gok",
    ),
    (
        Fails,
        "faalt | fout | verliest | slecht | werkt niet | gaat niet | lukt niet | wint niet | helpt niet | is niet goed | niet goed | en niets | te langzaam | weerlegd | geen mat | niet mat | ontsnapt \
         | blunder | te vroeg | levert niets op | is geen mat | alleen remise | faalt op | klopt niet | is fout | haalt niets uit | deugt niet | mislukt",
    ),
    (Works, "werkt | wint | lukt | zwart verliest"),
    (First, "maar eerst"),
    (
        Better,
        "beter | juist | goed is | sterker | is beter | is juist | is sterker | beter is | eerst komt | is de oplossing | is de juiste zet | juiste zet is | de juiste zet is",
    ),
    (Because, "omdat | want | wegens | vanwege | doordat | door"),
    (So, "dus | daarom | vandaar"),
    (Claim, "speel | ik speel | kies | zet"),
    (Answer, "oplossing | antwoord | sleutel"),
    (Quits, "ik geef op | ik geef het op | geef het op"),
    (Else, "al het andere | andere zetten | de rest"),
    (
        Aside,
        "gisteren | partij | week | toernooi | tegenstander | club | hij | zij | was | verloren | gespeeld | lijkend",
    ),
    (Tag, "toch | niet waar"),
    (
        Asks,
        "waarom | hoe | wat | wie | welke | waarom niet | wat gebeurt er | wat gebeurt er na | wat als | hoe zit het met | wat met | wat dacht je van | kan | mag | zou",
    ),
    (
        Filler,
        "is | ik | mijn | het | de | een | die | dat | dit | is | bedankt | hallo | hoi | ja | eerst | meteen | direct | denk | geloof | goed | mooi | leuk | alsjeblieft | makkelijk | coach | trainer | kom op | pak aan \
         | heel | erg | ook | wit | zwart | offer | dubbelschaak | nu | gewoon | er | zo | te | dan ik | klaar | gevonden | opgelost",
    ),
];
