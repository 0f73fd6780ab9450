//! Portuguese words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "rei"),
    (Man(Queen), "dama | rainha"),
    (Man(Rook), "torre"),
    (Man(Bishop), "bispo"),
    (Man(Knight), "cavalo"),
    (Man(Pawn), "peão"),
    (
        Takes,
        "capturar | capturo | tomo | tomar | comer | toma | captura | come",
    ),
    (For, "por"),
    (To, "para | em | a | vai para | vai"),
    (On, "de | da | do"),
    (Check, "xeque | com xeque"),
    (Mate, "mate | xeque-mate | xeque mate | e mate | é mate"),
    (EnPassant, "passagem"),
    (With, "com"),
    (Puts, "sacrifico"),
    (Castles(None), "roque"),
    (Wing(CastlingSide::KingSide), "pequeno | curto"),
    (Wing(CastlingSide::QueenSide), "grande | longo"),
    (Promotes, "promovo | promover | promovendo | promove | vira"),
    (Any, "qualquer | qualquer lance"),
    (Or, "ou"),
    (If, "se | depois de | após | em caso de"),
    (
        Then,
        "depois | e | e depois | então | seguido de | mas depois | ameaça | e agora | e então",
    ),
    (Not, "nunca | e não | mas não | sem"),
    (Deny, "não"),
    (
        TakesBack,
        "devia ser | era para ser | deveria ser | desculpe | desculpa | espera | espere | não espera | correção | quis dizer | queria dizer | ops | opa | corrijo | edit | editado | erro de digitação \
         | me enganei | enganei-me | digo | ou melhor | aliás | na verdade | perdão",
    ),
    (
        Instead,
        "em vez de | ao invés de | no lugar de | melhor que | é melhor que | é melhor do que | é mais forte que | do que | melhor do que | mais forte que",
    ),
    (But, "mas | porém | contudo | mas sim"),
    (Before, "antes de"),
    (
        Former,
        "pensei | pensei em | pensava | primeira ideia | minha primeira ideia | a minha primeira ideia | queria | queria jogar | considerei | tentador | tentei \
         | no início | primeiro pensei | primeiro pensei em | tinha pensado | meu primeiro pensamento | escrevi",
    ),
    (Seems, "parece | parecia"),
    (
        Hedge,
        "em dúvida entre | hesito entre | provavelmente | talvez | quem sabe | poderia | pode ser | não tenho certeza | não sei | não faço ideia | possivelmente | sem certeza | não tenho a certeza",
    ),
    (
        Fails,
        "falha | perde | errado | errada | erro | ruim | mau | má | não funciona | não dá | não serve | não ganha | não dá mate | não é mate | não basta | e nada | não resulta \
         | muito lento | lento demais | refutado | escapa | foge | não leva a nada | prematuro | só empate | não é bom | não é boa | não vale | é um erro | não dá certo",
    ),
    (Works, "funciona | ganha | resulta | as pretas perdem"),
    (First, "mas antes | mas primeiro"),
    (
        Better,
        "melhor | certo | certa | correto | correta | é melhor | é certo | é correto | o certo é | o correto é | é a solução | primeiro vem | mais forte | é mais forte",
    ),
    (Because, "porque | por causa de | devido a | pois | já que"),
    (So, "então jogo | por isso | portanto | logo | assim"),
    (Claim, "jogo | eu jogo | escolho | lance"),
    (Answer, "solução | resposta | chave"),
    (Quits, "desisto"),
    (
        Else,
        "todo o resto | tudo o resto | outros lances | os outros lances | o resto",
    ),
    (
        Aside,
        "ontem | partida | semana | torneio | adversário | clube | ele | ela | perdi | joguei | jogou | parecido | era",
    ),
    (Tag, "né | não é | certo não"),
    (
        Asks,
        "por que | porque não | por que não | como | quem | qual | o que | que tal | o que acontece | o que acontece depois de | o que acontece se | posso | e se | será que | será",
    ),
    (
        Filler,
        "é | eu | minha | meu | o | a | os | as | um | uma | é | obrigado | obrigada | olá | oi | sim | primeiro | logo | de imediato | imediatamente | acho | penso | bem | bom | boa | por favor | fácil \
         | treinador | vamos | toma essa | muito | também | brancas | pretas | sacrifício | duplo | a descoberto | agora | claro | só | se | me | ao | já | resolvido | pronto",
    ),
];
