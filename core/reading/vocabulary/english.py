"""English: which words stand for which symbol. Phrases win over single words, exact over near."""

WORDS = {
    # --- what is counted -------------------------------------------------------------------
    "pitches": "pitchs, throws, tosses, pitch count, pitchcount, total pitches, total throws",
    "throws": "balls thrown",
    "breaking": "breaking stuff, breaking pitch count, bbl, bbls, bendy balls, benders, spin, spins, "
    "spinners, spin balls, spin reps, breaker, brk, brkg, brking",
    "curve": "hook, hooks, hammer, hammers, deuce, deuces, yakker, yakkers, uncle charlie, "
    "uncle charlies, 12-6, 12-6s, 12-6 curve, 12-6 curves, 12-6 curveball, 12-6 curveballs, "
    "12 6 curve, 12 6 curves, "
    "knuckle curve, knuckle curves, knucklecurve, knucklecurves, curvs, curvies, crvs, curvy, yacker, "
    "yackers, charlies, breaking curves, spike curve, spike curves, curve ball, crvballs, curbs",
    "slider": "slidr, slidrs",
    "changeup": "change, changes, circle change, circle changes, circle changeups, chups, cu, cus, "
    "circle changeup, changers, straight change",
    "fastball": "4 seam, 4 seams, 4 seamer, 4 seamers, four seam, four seams, four seamers, four seamer, "
    "fastball 4 seam, 4sm, heater, heaters, heat, fast ball, fast balls, gas, cheese, "
    "4 seam fastball, 4 seam fastballs, 2 seam fastballs, 2 seam fastball, "
    "2 seam, 2 seams, 2 seamer, 2 seamers, two seam, two seamers, two seamer, two seams, "
    "sinker, sinkers",
    "cutter": "cutter, cutters, ct, cts, cut fastball, cut fastballs, splitter, splitters, splits, knuckleball, "
    "knuckleballs, knuckler, knucklers, screwball, screwballs, eephus, palmball, palmballs, "
    "forkball, forkballs, splitty",
    "mixedtype": "offspeed, off speed, offspeeds, off speed pitches, offspeed pitches, junk, secondary, "
    "secondaries, sweeper, sweepers, slurve, slurves, slurvy, os, non fastballs, nonfastballs, "
    "other pitches, others, c, f, s",
    "finger": "ones, twos, threes, fours, 1s, 2s, 3s, 4s",
    "strikes": "strks, stk, stks, in the zone, strikes thrown, strike count",
    "forstrikes": "for strikes, for a strike, for strike, were strikes, strikes on those, of em for strikes, "
    "of them for strikes, of those for strikes, of em strikes, of them strikes, of those strikes, "
    "of them were strikes, of em were strikes, landed, landed for strikes, of those were strikes, "
    "of which were strikes, in there for strikes",
    "balls": "balls",
    "innings": "innngs, inngs, inings, ining, frame, frames, innings pitched, ip's, innigs, inning pitched",
    "outs": "outs recorded",
    "scoreless": "scoreless, shutout, clean, perfect, hitless, relief, solid, tough, strong, quick, full, good, more, "
    "complete, easy, great, quality, no hit",
    "ofinning": "of an inning, of inning, of a inning",
    # --- numbers in words --------------------------------------------------------------------
    "none": "no, zero, 0, none, nada, zip, without, without any, without a, no more, not any, never threw, "
    "did not throw any, didnt throw any, didn't throw any, didnt throw a, didn't throw a, "
    "didnt throw, didn't throw, didn't use any, did not throw a, did not throw, never threw any, "
    "didnt use any, not one, not a single, aint throw any, never threw a, not a, not throwing, "
    "didnt mix any, wasn't throwing, stayed away from, skipped the, w/o, w/o any, "
    "havent thrown any, no real, dont throw, dont throw any, doesnt throw, skip",
    "vague": "few, couple, some, several, handful, bunch, lots, lot, tons, many, ton, plenty, most, mostly, "
    "bunch of, lots of, a few, a couple, couple of, a couple of, a handful of, a bunch of, too many",
    "over": "over, almost, nearly, at least, more than, less than, under, close to, north of, upwards of, "
    "up to, just under, just over, nearly, fewer than, well over, not quite, no more than",
    "each": "each, apiece, a piece, ea, per guy, per kid, a day, each day, both days, both times, per day, "
    "every day, each time, per",
    "both": "both",
    "sets": "sets of, set of, x, ×, rounds of, round of, sets, set, rounds, times",
    "total": "total, totl, tot, altogether, all together, in all, overall, combined, grand total, all in, "
    "on the day, for the day, all told, ttl",
    "ish": "ish, or so, or thereabouts, give or take, roughly, i think, ballpark",
    "about": "about, around, roughly, approximately, like, maybe, probably, prob, prolly, bout, abt, "
    "somewhere around, somewhere near, in the neighborhood of, i think, i think it was, i wanna say, "
    "guessing, id guess, i'd guess, i would guess, i guess, ballpark, estimate, est, estimated, right around, "
    "give or take, something like, sumthin like, circa",
    "correction": "no wait, wait no, no sorry, sorry, i mean, make that, scratch that, actually, correction, "
    "rather, er, oops, my bad, nvm, i meant, meant, wait, make it, should be, nope, edit, no make that, "
    "actually no, no actually, strike that, sry, whoops, my mistake, or rather, no i mean, wait i mean, "
    "sorry i mean, wait actually, let me fix that, fix, correct that, typo, nah, no it was, wait it was, "
    "sorry its, sorry it was, sorry make that, it was actually, was actually, actually it was, oops i mean, "
    "lemme correct that, check that, hold on, no nvm, hang on, oops make that, was really, really",
    "insteadof": "not, instead of, rather than",
    "or": "or",
    "at": "at, @",
    # --- kinds of outing ---------------------------------------------------------------------
    "bullpen": "side session, side work, side, bullpen session, pen session, lesson, pitching lesson, mound work, "
    "bully, warmed up, warm up, warmup, warm ups, warmups, warming up, pregame pen, pen work, touch and feel, "
    "mound session, off the mound, short box, pitching practice, off a mound, bullie, p lesson, b pen, b-pen, "
    "pitch lesson, command pen, warmed, getting loose, got loose, sides, off the bump, pb",
    "catch": "catch play, playing catch, played catch, play catch, catchplay, plyo catch, plyos, short toss, catch, "
    "long tossed, l toss, long tossing, flat ground work, throwing program, flat ground session, flat grnd, "
    "tossed, toss, flatgrounds, fg, lt, long catch, partner catch, throwing progression, "
    "playcatch, towel, partner throwing, arm care throws, longtossed, throwing partner",
    "live": "live, lives, scrimmaged ourselves, our own guys, our own hitters, own hitters, inter squad, "
    "scrimmage vs ourselves, our hitters, live hitting, live pitching, live session, live arm, "
    "intrasquad scrimmage, intrasquad game, live scrimmage, team scrimmage, live to hitters, "
    "our own batters, own batters, live innings, sim, simulated",
    "scrimmage": "scrimmage, scrimmaged, scrim, scrimmages, controlled scrimmage, practice game",
    "game": "games, gm1, start, started, starting, outing, relief, relief appearance, in relief, got the start, "
    "appearance, game day, starter, closed, the win, complete game, cg, got the win, got the save, "
    "doubleheader, dh, double header, twin bill, opener, nightcap, the save, closing, got the w, got the loss, "
    "took the loss, took the l, save, tourney game, tournament game, bracket game, pool play, "
    "championship, playoff game, league game, playoffs, playoff, semis, semifinal, semifinals, quarterfinal, "
    "tourney, tournament, started on the mound, the start, tonights start, todays start, bracket play, title game, "
    "home opener, came in in relief, in game",
    "bp": "bp, batting practice, threw bp, threw batting practice, throwing bp, pitched bp, bp arm, "
    "bp to, bp thrower",
    "tryout": "tryout, tryouts, showcase, showcases, camp, combine, pro day, prospect camp, clinic",
    "restday": "rest day, day off, off day, no throw, no throw day, took today off, rested, resting, "
    "no throwing, took the day off, off today, no throwing today, didn't throw today, "
    "didnt throw today, did not throw today, day of rest, rested today, took off, "
    "recovery day, no ball today, no throws, arm rest, off no throwing, off today no throwing, zero throws, "
    "did not throw at all, didnt throw at all, didn't throw at all, not throwing today, "
    "rest today, no throws today, arm day off, didnt pick up a ball, "
    "didn't pick up a ball, didnt touch a ball, didn't touch a ball, took it off, off yesterday, off all weekend, "
    "didnt throw yesterday, didn't throw yesterday, no throwing yesterday, zero throwing, didnt throw, "
    "didn't throw, did not throw, rested yesterday, 0 throws, no throwing for me, total rest, complete rest, full rest",
    "off": "off",
    "notpitched": "didnt pitch, didn't pitch, did not pitch, not pitching, no pitching, dnp, didnt get in, "
    "didnt end up pitching, didnt get to pitch, wasnt pitching, never pitched, didn't get to pitch, "
    "no pitching today, wont pitch, not pitch, did not get to pitch, didn't end up pitching, "
    "didnt play, didn't play, did not play, no innings, scratched, rained out, rainout, "
    "game cancelled, game canceled, postponed, cancelled, canceled",
    "neverin": "never got in, didnt get in the game, never entered, did not get in, didn't get in, "
    "never came in, never went in, didnt go in, didn't go in, never used, "
    "didnt enter, didn't enter, never got the call, never got called, never got put in, didnt come in, "
    "did not enter the game, never got into the game, didnt get into the game, never got to go in, not used, "
    "didn't get in the game, didnt get used, never needed me, didnt get called, never pitched in the game, "
    "not needed, wasn't needed, wasnt needed, never got in the game, didn't get into the game, "
    "never entered the game, didnt need me, didnt need him, never went out there, never got to pitch",
    # --- verbs and glue --------------------------------------------------------------------
    "threw": "threw, thrown, pitched, tossed, throwed, thru, used, went, thew, chucked, hurled, through, "
    "had, logged, got through, ended up throwing, ended up with, worked, racked up, put in, mixed in, "
    "needed, finished, did, got in, has, totaled, totalled, dealt, spun, snapped, throwing, took, got, mixed, "
    "landed on, i have, snapped off, i had, we had, shows, says, only threw, has him at, had him at, had me at, "
    "tallied, counted, threw a, delivered, dropped",
    "finish": "finished at, finished with, ended at, ended with, ended up at, final, final count, done at, "
    "finished on, pulled at, pulled me at, pulled him at, out at, ended up, wound up at, wound up with, "
    "total was, came out at, stopped at, at the end, ended on, took me out at, took him out at, "
    "closed at, settled on, sat down at, done after, out after, pulled after, pulled me after, pulled him after, "
    "came out after, lifted at, lifted after, taken out at, taken out after, yanked at, yanked me at, "
    "yanked after, shut down at, shut it down at, cut off at, stopped me at, stopped him at, capped out at, "
    "got pulled at, was done at, finished up at, ended the day at, up to",
    "running": "was at, sitting at, already at, been at, were at, was already at, i was at, was up to, he was at, had been at",
    "of": "of, outta, out of, off of, from, outa",
    "in": "in, into, on, over, during, across, for, through, thru",
    "inthe": "in the, in my, in his, in a, in her, in an, in our, in todays, in tonights, in today's, in tonight's, "
    "in yesterdays, off a, out of the, from the, off the",
    "with": "with, w, w/, wit, including, incl, inc, mixing in, plus",
    "and": "and, n, an, also, along with, as well as, &amp;",
    "is": "is, was, were, are, be, being, been, equals, =, came to, counted as, came out to, comes to, made it, thats, that's, "
    "reads, its, it's, it was, makes, makes it, adds up to, to be",
    "the": "the, my, his, her, their, our, those, these, this, that, it, your, its, any, all, just, only, even, also, so, "
    "hers, i, he, she, we, exactly, right, another, one of, today, tonight, so, ya, u, actual, today's, todays, tonights, "
    "tonight's, were, was, they",
    "a": "a, an",
    "them": "em, them, of em, of them, of those, of which, of these, which, of 'em, 'em, those, of m, of it, "
    "of that, of my pitches, of his pitches, of her pitches, of the pitches, of thm, dem, of my throws, "
    "of the throws, of his throws, of her throws, of the total, of that total, of the bunch, outta those, "
    "out of those, out of that, out of them, out of em",
    "adj": "nasty, good, sharp, hard, easy, slow, filthy, solid, clean, straight, real, decent, loopy, quality, "
    "little, big, real, nice, bad, ugly, great, light, soft, gentle, max effort, quick, tiny, "
    "total, more, better, full, game, throw, pen, whole, hard, measly, lousy, sweet, "
    "beautiful, crisp, healthy, gorgeous, whopping, actual, slow, clean, short, smooth, lazy, "
    "hanging, warm, live, competitive, counted, official, charted, legit, mph, long, new, "
    "tight spin, early, late, bouncing, tough",
    "vs": "against, facing, @ the, faced, playing, beat, we beat, they beat, lost to, we lost to, at home vs, "
    "at home against, played",
    "ofpitch": "pitch, throw, ball",
    # --- days --------------------------------------------------------------------------------
    "today": "today, tonight, tonite, this morning, this afternoon, this evening, 2day, just now, earlier, "
    "earlier today, just got home, this am",
    "yesterday": "yesterday, yest, yesterdays, yesterday's, last night, last nite, yday, ytd, yesteday, ystrday, "
    "last nights, last night's, y'day, yesterday afternoon, yesterday morning, yesterday evening, yesterday night, "
    "the day before, ysterday, yesturday, previous day",
    "daybefore": "day before yesterday, the day before yesterday, other day before",
    "daysago": "days ago, day ago, nights ago, night ago, days back, d ago",
    "weekday": "",  # filled in by days.py: names carry a value
    "lastday": "last, this past, this last, past",
    "otherday": "the other day, other day, other night, earlier this week, over the weekend, "
    "this weekend, a few days ago, few days ago, a couple days ago, couple days ago, recently, the weekend, "
    "last weekend, sometime this week, some day this week",
    # --- pain --------------------------------------------------------------------------------
    "pain": "pain, pains, hurt, hurts, hurting, painful, ache, aches, aching, achy, pinch, pinching, pinched, twinge, "
    "tight, tightness, stiff, stiffness, sharp pain, throbbing, throb, tweaked, strain, strained, "
    "bruised, swollen, swelling, numb, numbness, tingling, tingly, tingles, burning, pulled a muscle, tender, "
    "discomfort, uncomfortable, cramp, cramping, cramped, cramped up, popped, pop, bothering, bothers, bothered, "
    "barking, bugging, killing, sprained, sprain, jammed, irritated, inflamed, zinged, zing, barked, "
    "tweak, injured, injury, ouch, stinging, stings, stung, tightened up, nagging, acting up, grabbed, flared up, "
    "stinger, tight up, throbs, pulsing, locked up, locking up, off feeling, felt weird, feels weird, "
    "feels off, felt off, feels funny, felt funny, giving me trouble, giving him trouble, giving her trouble, "
    "bothering him, flaring up, flare up, tendonitis, tendinitis, cranky, feeling it, felt something, "
    "feels something, pulled, tingle, bothersome, hurtin, painfull, stabbing, wonky, not right, doesn't feel right, "
    "doesnt feel right, not feeling right, unstable, shooting pain, crampy, bit me, stingy",
    "sore": "sore, soreness, soar, sorness, soreish, sorish, soreish, sored, sor",
    "painscale": "pain level, pain scale, pain scale of, level, scale, on the pain scale, on a pain scale, "
    "pain rating, on the scale, pain score, out of ten, pain lvl, lvl, pain is",
    "outof": "out of, outta, /, of, over",
    "painfree": "pain free, painfree, pain-free, zero pain, no pain, no arm pain, no issues, no soreness, "
    "no complaints, no problems, no arm soreness, no arm issues, no arm trouble, no discomfort, no tightness, "
    "nothing hurts, nothing hurt, nothing sore, not sore, not hurting, isnt sore, isn't sore, "
    "doesnt hurt, doesn't hurt, didnt hurt, didn't hurt, wasnt sore, wasn't sore, not painful, without pain, "
    "does not hurt, did not hurt, no elbow pain, no shoulder pain, no stiffness, no aches, no arm problems, "
    "no arm complaints, pain none, pain no, pain nope, no pain at all, no pain anywhere, "
    "no pain or soreness, no soreness or pain, no pain no soreness, soreness none, never hurt, never hurts, "
    "nothing hurting, no hurt, no twinges, no pains, any pain no, not in pain, no pain today, no pain for him, "
    "no pain for her, denies pain, not sore at all, no pain reported, no pain after, no pain during, "
    "no signs of pain, isnt hurting, isn't hurting, aint sore, aint hurting, ain't sore, nothing bothering me, "
    "nothing bothering him, nothing bothering her, pain 0, 0 pain, pain zero, pain nada, no trouble, no concerns, "
    "no tightness or pain, no pain or tightness, no arm discomfort, no barking, no ouch",
    "armgood": "good, fine, great, ok, okay, perfect, strong, fresh, loose, normal, amazing, awesome, solid, "
    "alright, all right, feels good, felt good, feels great, felt great, fantastic, healthy, live, lively, alive, "
    "so good, really good, gud, excellent, well, 100, hundred, all good, golden, wonderful, unreal, electric, "
    "a ok, ready to go, like new, brand new, good to go, grt, smooth, clean, better, no prob, awesomee",
    "feels": "feels, felt, feel, feeling, feelin, is, was, says, said, seems, seemed, still, all, pretty, really, real, "
    "so, very, super, totally, feelings, just, stayed, held up, holding up, came out, doing, completely, looks, "
    "looked, says it feels, is feeling, is still, was feeling",
    "site": "",  # filled in by sites below
    "leftside": "left, lft, l",
    "rightside": "right, rt, r, rgt",
    "throwingside": "throwing, pitching, inside, outside, inner, outer, medial, lateral, front, upper, lower, top",
    "duringpain": "during, while throwing, while pitching, when throwing, when i throw, when i threw, on curves, "
    "when pitching, when he throws, when she throws, when i release, mid game, in game, when throwing curves, "
    "on my curve, on the curve, every time i throw",
    "afterpain": "after, afterwards, afterward, after the game, postgame, post game, when i was done, once done, "
    "when i finished, when done, right after",
    "nextdaypain": "next day, the next day, the day after, day after, next morning, the morning after, morning after, woke up",
    "restpain": "at rest, when resting, even at rest, even when resting, sitting still, just sitting, at night",
    "unsure": "holding his arm, holding her arm, grabbing his arm, grabbing his elbow, holding his elbow, "
    "holding his shoulder, rubbing his elbow, rubbing his arm, rubbing his shoulder, shaking his arm, icing it, "
    "grabbing her arm, shaking it out, wincing, winced, grimacing, grimaced, favoring, favouring, "
    "holding my arm, grabbing at his elbow, grabbing at his arm, grabbing his shoulder, rubbing her elbow, "
    "holding her elbow, holding her shoulder, rubbing it, grabbed his elbow, grabbed his arm, grabbed his shoulder, "
    "shaking out his arm, crying, kept shaking his arm, kept rubbing, kept grabbing, flexing his hand, "
    "favoring his arm, favoring it, rubbing her arm, rubbing her shoulder, not convinced, dont believe him, "
    "don't believe him, lying, hiding something, hiding it, wont admit, won't admit",
    "tired": "tired, dead, fatigued, fatigue, gassed, heavy, worn out, exhausted, spent, wiped, shot, toast, "
    "dead arm, tuckered, jello, noodle, like jello, like a noodle, hanging, weak, drained, tierd, wore out, beat up, "
    "rubber, cooked, fried, tiring, rubbery, tired arm, arm fatigue, out of gas, sluggish, fading, beat, jelly, smoked",
    "untired": "not tired, isnt tired, isn't tired, not fatigued, no fatigue, wasnt tired, wasn't tired, "
    "not tired at all, not gassed, not heavy, no arm fatigue, not even tired, doesn't feel tired, doesnt feel tired, "
    "not tired either, didnt get tired, didn't get tired, never got tired, not dead, not worn out, not tired",
    "pain_idiom": "no pain no gain, pain in the butt, pain in the neck, pain in the ass, elbow grease, sore loser, "
    "sore losers, hurt our, hurt us, hurts us, growing pains, hurt the team, hurt my feelings, painful loss, "
    "hurts to lose, tough loss, tight game, tight zone, tight strike zone, hit by pitch, hbp, "
    "pop up, pop ups, pop fly, popped up, popped out, popping the mitt, popped the mitt, pop flies, pop time, "
    "shoulder to shoulder, head first, heads up, heads-up, hand eye, on the other hand, back to back, came back, "
    "killing it, killed it, killing them, killing us, pulled me, pulled him, pulled her, pulled us, got pulled, pulled early, "
    "pulled by, hurts so bad losing, ball popped, knee high, knees high, at the knees, knee buckler, knee bucklers, "
    "on hand, hand it to, big hand, hands down, back door, backdoor, back foot, back in, back out, back home, back at it, "
    "backup, ice pack, neck and neck, got burned, tight schedule, tight ballgame, tight one, sore subject, "
    "hurt that we, tight fit, pinch hit, pinch hitter, pinch run, pinch runner, pinch ran, burning up, killing me w, "
    "pulled a, pulled in, pulled up, pulled out, pop in, popped in, numbers, it hurt to watch, hurt to watch, "
    "heart hurts, feelings hurt, pulled",
    "icing": "ice, iced, icing, ice after, icing now, heat pack",
    # --- people ------------------------------------------------------------------------------
    "everyone": "everyone, everybody, all pitchers, whole staff, every pitcher, all the pitchers, the whole staff, "
    "whole team, all of them, all the guys, all guys, the whole group, all arms, all hands, the whole team, entire staff, "
    "the entire staff, every arm, all of the pitchers, the pitchers all",
    "except": "except, except for, but not, minus, all but, besides, other than, excluding, aside from, apart from",
    "myself": "me, i, mine, myself, im, i'm, self",
    "heself": "he, she, him, my son, my daughter, my kid, our son, our daughter, my boy, my girl, his, her, son, daughter, kiddo, "
    "my oldest, my youngest, our kid",
    "title": "coach, mr, mrs, ms, dr, doc, uncle, trainer",
    "forwhom": "for, logging for, log for, this is for, entering for, posting for, this one is for, on behalf of, reporting for, "
    "putting in for, for:, re, logging this for",
    "listno": "",
    # --- no log ---------------------------------------------------------------------------------
    "limit": "limit, limits, max, cap, limit of, limited to, capped at, max of, maximum, pitch limit, pitch count limit, "
    "no more than, limit is, limit was, cap of, on a limit of, allowed, was allowed, threshold, maxed, restriction, "
    "pitch max, max is, pitch cap, hard cap, capped, mercy rule, "
    "limit today, up to, budget, budgeted, not to exceed, scheduled for, pitch limit of, daily limit, rule is, the rule",
    "radar": "topped, topped out, topped out at, touched, hit, sitting, maxed out, maxed out at, clocked, "
    "clocked at, cruising, velo, gun, radar, velocity, t, tops, topping, topped at, peaked at, averaging, avg, averaged, "
    "hitting, hit a, touching, peaked, velo was, gunned, radar said, radar had, gun had, gun said, sat at, stalker, pocket radar, "
    "touch, top velo, top speed, fb velo, sits, velo up to, was touching, running it up to, up to, ran it up to, reached, "
    "bumping, bumped, living, topping out, topping out at",
    "mph": "mph, miles per hour, mi/h, miles an hour, mphs, on the gun, on the radar, on gun, on radar, on the stalker, velo, "
    "mph tops, miles",
    "sat": "sat",
    "win": "won, win, wins, beat, winning, lost, lose, loss, tied, tie, final score, score, l, w, dub, victory, up, down, "
    "losing, defeated, lead, leading, ahead, behind, trailing, fell, final, walk off, mercied, ended, ended in, took it, "
    "walkoff, trailed, led, edged, run ruled, "
    "won it, we won, we lost, game score, series, record, record is, standings, tally",
    "stat": "strikeouts, strikeout, strike outs, struck out, walks, walk, walked, hits, hit, runs, run, er, earned, earned runs, "
    "errors, error, hr, homers, homer, homeruns, home runs, home run, dingers, doubles, double, triple, triples, single, "
    "singles, steals, sb, stolen bases, rbi, punchouts, punch outs, punchies, ribbies, hbp, hit by pitch, hit batters, "
    "wild pitches, wild pitch, wp, passed balls, batters, hitters, bunts, bunt, groundouts, groundballs, ground balls, "
    "fly balls, flyouts, swings, whiffs, swing and miss, foul balls, fouls, at bats, abs, ab, base hits, baserunners, "
    "unearned, bases, pickoffs, plays, putouts, assists, dps, double plays, knocks, knock, xbh, batters faced, bb's, walk s, "
    "pop ups, pop outs, popups, base runners, runners, free passes, freebies, no hitter, hbps, h, backwards k, looking, "
    "swinging, punched out, fanned, sat down, whiffed, dinger, bombs, bomb, jacks, beaned, plunked, left on, lob, lineouts, "
    "grounders, line drives, flyballs, fly outs, ground outs, ump, pitches fouled off, balks, balk, steal, full counts",
    "battingavg": "batting, hitting, avg, average, era, whip, obp, ops, slg, ba, fielding, era is, era down to, fip",
    "thing": "people, players, kids, guys, games, game, tickets, dollars, bucks, minutes, minute, hours, hour, hrs, hr, weeks, "
    "week, months, month, years, year, yr, yrs, yo, y/o, days rest, degrees, degree, deg, pounds, pound, ounce, ounces, yards, yds, yd, "
    "foot, laps, sprints, squats, pushups, push ups, situps, reps of, poles, swings, grounders, times, parents, "
    "cars, drivers, sandwiches, pizzas, waters, gatorades, burgers, hot dogs, hotdogs, rows, seats, spots, teams, "
    "fields, cages, helmets, bats, gloves, jerseys, shirts, hats, cookies, inches, inch, in long, seconds, secs, sec, "
    "miles away, mins, min, lb, lbs, oz, ounce ball, sisters, brothers, uniforms, nights, hotels, rooms, coaches, umpires, umps, "
    "hour drive, hour delay, min delay, minute delay, delay, place, seed, th grade, grade, grader, graders, bags, boxes, dozen, "
    "cents, k run, weeks off, days off, wks, wk, weeks ago, week ago, months ago, month ago, weeks back, years ago, "
    "year old, year olds, yr old, yr olds, innings game, inning game, out of town, parking, steps, pull ups, pullups, planks, "
    "guys left, more days, more weeks, more games, days straight, games in, days, day, tourneys, tournaments, starts, "
    "pens, outings, bullpens, nights, pieces, slices, wings, tacos, donuts, cokes, water bottles, players max, families, "
    "hit, fans, scouts, degrees out, percent chance, chance of rain, rain, volunteers, shifts, ounces, calories, "
    "am, pm, a m, p m, ft mound, footer, footers, buckets, bucket, balls in the bucket, baseballs, dozen balls, doz balls, dimes, "
    "points, point, pts, vans, carpools, emails, texts, photos, pics, videos, video, clips, clip, followers, views, likes, retweets, "
    "homework problems, pages, classes, tests, quiz, problems, period",
    "place": "field, fields, cage, cages, court, diamond, lot, room, exit, hwy, highway, route, bus, gate, section, row, seat, locker, "
    "apt, suite, door, park, station, rm, building, bldg, street, complex, #, no., number, num, channel, ch., zip, page, "
    "rank, ranked, seed, pool, group, division, grade, week, day, age, ages, chapter, u, venmo, box, bay, mound, bullpen no, "
    "period, version, iphone, interstate, pin, code, table, class of",
    "jersey": "#, jersey, no, wearing, number",
    "half": "top, bottom, bot, btm, top of, bottom of, top of the, bottom of the, end of, mid",
    "fielding": "ss, short, shortstop, cf, rf, lf, 1b, 2b, 3b, first base, second base, third base, center field, centerfield, left field, "
    "right field, outfield, infield, of, dh'd, the bench, bench, first, second, third, center, left, right field, "
    "in the field, at short, at ss, at third, at first, at second, in left, in right, in center, in cf, in lf, in rf, in the outfield",
    "catching": "caught, behind the dish, behind the plate, behind the backstop, at catcher, catching, as catcher, "
    "at c, catcher, caught the, as the catcher, in the gear, caught for, squatting, behind home",
    "ageband": "u, yr old, year old, yo, yr, yrs old, years old",
    "vs_other": "",
    "season": "on the season, this season, season total, so far this season, on the year, this year, season, so far, all season, "
    "year to date, ytd, for the season, in the season, season high, since march, since february, career, career high, "
    "last season, last year, this fall, this spring, this summer, this month, all year, all spring, all summer, "
    "year total, weekly total, for the week, this week total, lifetime, personal best, pr, pb, since april, since may, "
    "since june, since july, in the last month, in my career, on the week, season long, team total, as a team, as a staff, "
    "total this week, total for the week, for the month, between them, last month, over the season, in april, in may, in june, "
    "week total, weeks total, career best, "
    "combined this week, this week",
    "pastref": "last week, last time, last outing, last start, last game, week before, other week, last appearance, "
    "two weeks ago, weeks ago, month ago, last pen, last bullpen, previous outing, previous start, a week ago, "
    "last friday's, earlier this year, used to, last month, 2 weeks ago, back then, a month ago, 3 weeks ago, last tourney, "
    "last tournament, few weeks ago, couple weeks ago, the week before, time before, last weeks, last week's",
    "plan": "tomorrow, tmrw, tmr, tmw, tomorow, tommorow, tomorro, 2morrow, 2mrw, next, plan, planning, plans, plan is, planned, "
    "gonna, going to, supposed to, scheduled, want to, wanna, hoping, hope to, goal, goals, let's, lets, please, pls, need to, "
    "needs to, will be, i'll, ill, we'll, he'll, she'll, you'll, trying to get to, shooting for, target, should get, "
    "can go, could go, would go, if, when i, i want, wants to, upcoming, remind, reminder, remember, schedule, coming up, "
    "gotta, have to, has to, next start, next outing, next week, next pen, can throw, can do, aim for, aiming for, "
    "expect, expecting, hopefully, might, should throw, lined up, until, due, due by, sign up, bring, looking to, looking for, "
    "intend, on tap, set for, this coming, later today, later tonight, later, thinking, you can, available, eligible, "
    "allowed to, get to, cant throw, can't throw, am i good, we have, we've got, order, meet, meeting, arrive, "
    "should, wanted, i wish, wish, coulda, could have, couldve, could've, would have, woulda, would've, shoulda, should have, "
    "should've, was supposed to, were supposed to, meant to, was gonna, was going to, almost threw, to go, left to go, "
    "can i, could i, may i, are we, do we, do i, did i, did we, did he, did she, should i, should we, is it, is he, is she, "
    "how many, how much, how long, what was, whats, what's, what is, what time, when is, when are, who wants, who has, who is, "
    "who's, whos, anyone, anybody, does anyone, does anybody, can someone, can somebody, can anyone, can we, can u, why, "
    "where is, where are, which, how do, how did, has anyone, does he, does she, was it, were there",
    "question": "?",
    "other": "that guy, their pitcher, their kid, their ace, other team, opposing pitcher, their guy, the other team, "
    "other pitcher, other kid, their starter, on tv, espn, mlb, watched, watching, big leaguer, the pros, their lefty, "
    "their righty, the other pitcher, opponent, opponents, opposing, other guy, their reliever, their closer, "
    "the kid on the other, his pitcher, my brother, my cousin, my buddy, my friend, brother, cousin, buddy, friend, teammate, "
    "guy on, a guy, some guy, some kid, a kid, that kid, this kid, kid from, guy from, their kids, their pitchers, "
    "major league, big league, college, in the pros, in mlb the show, the show, video game, rookie, in the show, xbox, ps5, "
    "youtube, tiktok, documentary, article, study, research, in history, hall of fame, legend, world series, "
    "they threw, their staff, their bullpen, their coach, dad threw, dad used, wiffle ball, wiffle, wiffleball, dodgeball, softball, "
    "heard, i read, read that, i saw, saw a, back in the day, grandpa, my dad",
    "joke": "jk, just kidding, jking, kidding, lol jk, million, gazillion, billion, thousand, bajillion, trillion, zillion, sike, psych, "
    "not really, /s, hundred million",
    "but": "but, still, however, though, except i, yet, instead, anyway, anyways",
    "then": "then, and then, after that, followed by, later, plus then, afterward, next up, then a, &then, finally, finished",
    "another": "another, 2nd pen, second pen, more in, again",
    "book": "the other book, other book, our book, their book, scorebook, book says, book has, coach has, coach had, dad has, dad had, "
    "mom has, mom had, app says, app had, clicker says, clicker had, their count, our count, my count, the book, my clicker, "
    "other scorer, other scorekeeper, coach said, coach says, dad says, mom says, dad counted, mom counted, i counted, i had, "
    "dads count, dad's count, coach counted, moms count, mom's count, opposing book, home book, visitor book, away book, "
    "gamechanger, their scorer, other team had, other team has, other bench, clicker, "
    "counter, other count, counter says, coaches count, coach's count, coachs count",
    "bothends": "both ends, both games, both halves",
    "labelgame": "",
    "byinning": "by inning, per inning, each inning, inning by inning, by innings, by frame, an inning",
    "speed": "speed, effort, intensity, strength, rpe, exertion, tempo, effort level, max, power, velo, energy",
    "halfspeed": "half speed, 1/2 speed, half effort, half intensity",
    "fullspeed": "full speed, full effort, max effort, all out, 100 percent effort, max intensity, full intensity, full tilt, full bore, full go",
    "threequarter": "three quarter speed, three quarters speed, 3/4 speed, 3/4 effort, three quarter effort, three quarters effort, "
    "3 quarter speed, three-quarter speed",
    "quarterspeed": "quarter speed, quarter effort, 1/4 speed",
    "armslot": "three quarter, three quarters, arm slot, 3/4 slot, slot, sidearm, submarine, over the top, three quarter slot",
}

SITES = {
    "arm": "arm, wing, arms, whole arm, soup bone, ar, arm's",
    "elbow": "elbow, elbows, elbo, elbw, elboe, ucl, funny bone, elbow's",
    "shoulder": "shoulder, shoulders, sholder, shoulda, shouder, shlder, shldr, rotator cuff, cuff, labrum, shoulder blade, delt, deltoid",
    "forearm": "forearm, forearms, fore arm, flexor",
    "wrist": "wrist, wrists",
    "hand": "hand, hands, palm",
    "finger": "finger, fingers, fingertip, middle finger, index finger, pinky, blister finger, ring finger, pointer finger, knuckle",
    "thumb": "thumb",
    "biceps": "bicep, biceps, bi",
    "triceps": "tricep, triceps, tri",
    "back": "back, lower back, upper back, low back, lats, spine",
    "lat": "lat",
    "neck": "neck",
    "side": "oblique, obliques, ribs, rib, rib cage, ribcage",
    "hip": "hip, hips",
    "groin": "groin",
    "knee": "knee, knees",
    "leg": "leg, legs, calf, shin, thigh",
    "hamstring": "hamstring, hammy, hammies, hamstrings, hammie",
    "quad": "quad, quads, quadricep",
    "ankle": "ankle, ankles",
    "foot": "heel, toe, toes, feet hurt",
    "head": "head, headache",
    "chest": "chest, pec, pecs",
    "stomach": "stomach, belly, abs hurt, tummy",
    "trap": "trap, traps",
    "scapula": "scap, scapula",
}

NUMBERS = {
    "zero": 0, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8,
    "nine": 9, "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15,
    "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19, "twenty": 20, "thirty": 30,
    "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90,
    "one": 1, "hundred": 100, "dozen": 12, "twelv": 12, "fiftyish": 50,
}  # fmt: skip

WEEKDAYS = {
    "0": "monday, mon, mondays, monday's, monday night, monday afternoon, monday morning, mon night, mondy",
    "1": "tuesday, tue, tues, tuesdays, tuesday's, tuesday night, tues night, tuesday afternoon, tue night",
    "2": "wednesday, wed, weds, wednesdays, wednesday's, wednesday night, wed night, wensday, wednsday",
    "3": "thursday, thu, thur, thurs, thursdays, thursday's, thursday night, thurs night, thurday",
    "4": "friday, fri, fridays, friday's, friday night, fri night",
    "5": "saturday, sat, saturdays, saturday's, saturday night, sat night, saturday morning, sat morning, saterday",
    "6": "sunday, sun, sundays, sunday's, sunday night, sun night, sunday morning, sun morning",
}
MONTHS = {
    "1": "january, jan", "2": "february, feb", "3": "march", "4": "april, apr", "5": "may",
    "6": "june, jun", "7": "july, jul", "8": "august, aug", "9": "september, sept, sep",
    "10": "october, oct", "11": "november, nov", "12": "december, dec",
}  # fmt: skip
