/**
 * Words that passwords are made of when anyone makes one in a hurry, from memory: whoever guesses tries them first, with
 * digits, years and signs around them. In small letters, as `plainForms` makes a password.
 */
export const commonWords: ReadonlySet<string> = new Set(
  `
abc abcd access admin administrator airforce alexander alexandra always amanda amazing amelia
america andrew angel anna anthony anything apollo apple apples april army arsenal artist asdf asdfgh
ashley august austin australia autumn awesome azerty baby babyboy babygirl backup bailey banana
bandit barbara barcelona baseball basketball bear bears beautiful bedroom bench benjamin berlin
berry bible bird birthday black blessed blessing blue blueberry blues bolt bolts boss boston boxing
brandon brass brasstag brazil brian bronze brother buddy bullet bunny burette burger buster butter
california camshaft canada candy captain car carlover cars casino cat chamber champion change
changeme changethis charles charlie charlotte cheese chelsea cherry chicago chicken chief china
chocolate christ christmas church class cobra coffee college computer computerman cookie cookies
cool coolguy copper cosmos counter cowboy cowboys crank crankshaft crazy cricket crimson crystal
cutie cylinder cylinderhead cylinders dad daddy daisy dallas dance dancer dancing daniel darling
david december deck default demo denver desert desktop destiny diamond diamonds diesel doctor dog
doggy dollar dollars dolphin donkey door doors dorothy dragon drummer drums dumb eagle eagles earth
easter edward elizabeth email emily emma engine engineer engineering engines england enter entrance
eternity everything example faith falcon family father february fire fireman fish fisher fishing
florida flowbench flower flowers football forest forever france freedom friday friend friends
friendship galaxy game gamer games gaming garage garden gasket gasoline general george germany ghost
ginger gladiator god godisgood gold golden golf golfer goodbye grace green grinder guest guide
guides guitar gunner hacker hammer handsome hannah happiness happy harmony harry hawk head heads
heaven hello hellothere henry hero heroes hockey holiday home homesweethome honey hope horse horses
hottie house houston hunter hunting hurricane iamtheboss icecream idiot iloveher ilovehim iloveyou
india indian infinity internet ireland iron isabella island italy itsme itsmine jack jackpot james
january japan jasmine jason jazz jennifer jessica jesus jesuschrist john jonathan jordan joseph
joshua julia july june jupiter justin juventus karen kevin key keyboard keys killer king kitchen
kitten kitty knight lakers laptop lasvegas lathe laughing laura legacy legend lemon letme letmein
letmeinnow liberty library lightning lily linda linux lion lions liverpool login logon london lord
loser lottery love lovely loveme lover loveyou lucky machine machines machinist madrid magic magical
mail manager march margaret maria marine mark maroon master matrix matthew max mechanic melissa
melody melon mercury merlin metal metalhead mexico michael michelle midnight mill million
millionaire mine minister mobile molly mom mommy monday money monitor monkey moonlight morning
mother motor motorbike motorcycle motors mountain mum mummy music myname mypass mypassword mysecret
myself nancy natalie navy network never newpass newpassword newyork nicholas nicole ninja nobody
nopassword nothing november nurse ocean october office oldpassword oliver olivia opensesame
openthedoor openup orange orangeblue oscar ourpassword outlaw owner packers painter panther paris
parrot pass passcode passpass passwd password passwort patricia patrick patriot paul peace peach
pepper perfect peter petrol phoenix phoenixaz phone piano pilot pink pirate pistol piston pistons
pizza planet platinum player poker poland police pony port ports president pretty prince princess
printer puppy purple qazwsx queen queenie qwerty qwertz rabbit racer rachel racing rainbow rangers
rate raven rebecca rebel red richard rifle river robert robot robots rock rocket rocknroll root rose
roses router rugby runner russia sailor sammy sample samuel samurai sarah saturday saturn saviour
scarlet school scorpion scotland seat seats secret secure security september serenity sergeant
server sexy shadow shark shop shopfloor signin silver singer sister smile smiles smokey sniper snow
snowman soccer soldier someone something sophia sophie soul spain spanner spartan spartans speed
spider spirit sports spring springs staff starlight steel steelers stephanie steven storm strawberry
student stupid sugar summer sunday sunrise sunset sunshine superuser susan sweden sweetheart
symphony system tablet tag tags tailor teacher temp temporary tennis tequila teresa test tester
testing texas thepassword thomas thunder thursday tiger tigers tinker titan titans together toolbox
toolman tools tornado trigger trinity truck trucks trustme trustno tuesday tulip turbo turtle
unicorn united universe university user username valve valves vegas venus victoria victory viking
vikings violet vodka warrior water website wednesday weekend welcome welder welding whatever whiskey
white wifi william wind window winner winter wireless wizard wolf wolves wordpass workshop wrench
wsxedc xyz yankee yankees yellow zxcvbn
`
    .trim()
    .split(/\s+/),
)
