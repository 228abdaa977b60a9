"""The roster as the staff keep it by hand: pitchers, their guardians and teams."""
