"""Abbreviations and trade words that English and Spanish lines have in common."""

WORDS = {
    "pitches": "p, pc, pit, pits, pitch, pitches, tp",
    "breaking": "breaking, breaking balls, breaking ball, breaking pitches, breaking pitch, breakers",
    "curve": "cb, cbs, cv, cvs, crv, crvs, cur, curve, curves, curveball, curveballs, curve balls",
    "slider": "sl, sls, sld, slid, slider, sliders",
    "changeup": "ch, chs, chg, chgs, chng, chup, change up, change ups, changeup, changeups",
    "fastball": "fb, fbs, fastball, fastballs, fast balls",
    "strikes": "str, strs, strike, strikes",
    "innings": "ip, inn, inns, ing, ings, inning, innings",
    "outs": "outs, out",
    "bullpen": "bullpen, bullpens, bull pen, pen, pens, bp pen, bpen, bpens",
    "catch": "flat ground, flat grounds, flatground, long toss, longtoss, flats",
    "live": "live bp, live ab, live abs, live at bats, live hitters, live batters, intrasquad, "
    "intra squad, intersquad, sim game, simulated game, live batting practice, live bps",
    "vs": "vs, v, versus",
    "mph": "mph",
    "stat": "k, ks, bb, bbs, hbp, er, era, whip, hr, hrs, rbi, rbis, obp, ops, k's, bf",
    "thing": "ft, feet, lb, lbs, oz, min, mins, u",
    "percent": "%, percent, pct",
    "game": "game, gm",
    "them": "em",
    "about": "~, ≈, aprox, approx",
    "more": "+",
    "and": "&",
    "bullet": "•, *, ·, ▪",
    "laugh": "lol, lmao, jk, jaja, jajaja, haha, hahaha",
}
