"""Everyday words that mean nothing to the log: never a name, never a typo of a trade word."""

ENGLISH = """
a about above across actually after again against ago ahead all almost alone along already also always am an and
another any anybody anyone anything anyway are arent around as ask asked asking at ate away awesome baby bad ball balls
base baseball based basically bat bats batting be beach beautiful because become bed been before began behind being believe below
best bet better between big birthday bit black blue book books boss both bottom bought box boy boys break breakfast bring
broke brother brought bunch bus but buy by call called came can cannot cant car care carry case cause center certain
chair chance chances charge check chill choose church city class clean clear close coach coaches cold college come comes coming
control cool corner correct cost could couldnt count counts country couple course cover crazy cross crowd cup cut dad daddy daily dance
dark date daughter day days dead deal decided deep did didnt different dinner dirty do doc doctor does doesnt dog doing
done dont door down draw dream dress drink drive driving drop dropped dude dugout during each early earn easy eat eight either else
end ended energy enjoy enough entire even evening ever every everybody everyone everything exactly except extra eye face
fact fall family fan fans far farm fast father favorite feel feeling feels feet fell felt few field fifth figure
filled final finally find fine finger finish finished fire first fit five floor fly focus follow following food foot football
for force forget forgot form forward found four free fresh friday friend friends from front full fun funny game games gas
gave gear get gets getting girl give given glad glove go goes going gone gonna good got gotta grade grass great green
ground group guess guy guys had half hand hands hang happen happened happy hard has hat hate have having he head hear
heard heart heat heavy held hell hello help her here hey hi high hill him his hit hits hitter hitters hitting hold home homework
hope hot hour hours house how huge hung hungry hurry i ice idea if im in inside instead into is isnt issue it its itself
job join joke jump just keep keeps kept kid kids kind kinda king knew know knows lady late lately later laugh
lead league learn least leave left leg less let lets level life lift light like line list listen lit little live
lived location lol long longer look looked looking looks lose loss lost lot lots loud love low luck lucky lunch mad made
main make makes making mama man many match matter may maybe me meal mean means meet mechanics men met middle might mine minute
miss missed mitt mix mixed mom moment mommy money month months more morning most mostly mother mound move moved
much music must my myself name near nearly need needs never new news next nice night no nobody none noon normal
not nothing now number of off office often oh ok okay old on once one only open opened or order other others our
out outside over own pack page park part party pass past pay people perfect person phone photo pick picked pitcher pitchers pizza
place plan play played player players playing please plus point practice pretty price probably problem proud pull pulled
push put quarter question quick quiet quit quite race rain ran read ready real really reason red release relief remember rest
result rhythm rich ride right road room rough round rule run running said same sat save saw say says schedule school score scored
scoreless season seat second see seem seemed seems seen send senior sent series set sets seven shape she short shot should show
shut side sign simple since sister sit six size skin skip sky slate sleep slept slow small smart smoke smooth snack so soft
solid some somebody someone something sometimes son song soon sorry sort sound speed spend spent spin sport spot
spring staff stand star start started state stay stayed step still stop stopped story straight street strong struggled stuff such
summer sun sunday super supposed sure sweet swing table take taken takes taking talk team teams tell ten test text than thank
thanks that thats the their them then there these they thing things think third this those though thought three threw
through throw throwing thrown tie til till time times tiny to today together told tomorrow tonight too took top total touch
tough tourney toward town train travel tried trip truck true trust try trying turn turned two umpire umps under uniform until up
upset us use used using usual very via video visit voice wait waiting walk wall wanna want wanted wants warm was wasnt watch watched
water way we weak wear weather week weekend weeks weird well went were werent wet what whatever wheel when where which while
white who whole whos why wife wild will win wind winning wins wish with within without woke wolf woman won wont wood word words
work worked working workout world worse worst worth would wouldnt wow write wrong yard yards yeah year years yelled yep yes
yesterday yet yo you young your yours yup zone session innings inning pitching pitched catcher glove helmet
below elbows spine spider glider pained pinned spin spun change chance chances chair chase cheese winner winnings
command feel felt located locating bounced hung spiked buried tunnel grip release arm-slot sharpness
boring starter starters closer reliever opener bro bruh sis fam yall ya nah naw yea ye pls plz thx ty idk imo tbh ngl omg btw rn
fr sec min cuz bc cause cus tho tho' though kinda sorta gotta hafta outta lemme gimme dunno
outing appearance mechanics timing balance stride hips dugout bench lineup roster uniform umpire strikezone zone
""".split()  # noqa: SIM905  a word list reads better as text

SPANISH = """
a al algo algunos ante antes aqui asi aun aunque bien bueno buena cada casa casi como con contra cosa cual cuando cuanto
de del desde despues dia dias dice dijo donde dos el ella ellos en entonces entre era es esa ese eso esta estaba estan
estar este esto estoy fue fui gracias gran grande ha hace hacer hacia hasta hay hecho hijo hija hijos hoy hubo igual ir
juega jugamos jugar jugo la las le les lo los luego mal mas me mejor menos mi mientras mis mismo mucho muchos muy nada
nadie ni nino ninos no nos nosotros nuestra nuestro o otra otro otros para pero poco por porque pues que quien quiere
se ser si siempre sin sobre solo son soy su sus tal tambien tan tanto te tengo tener tiene tienen toda todas todo todos
tres tu un una uno unos va vamos van ver vez viene voy y ya yo primera segunda tercera cuarta quinta sexta septima
lanzo lance tiro tire tira tiran picheo lanzador pitcher entrenador equipo partido juego campo practica papa mama
""".split()  # noqa: SIM905
