"""Temperature logs in tests/logs read by pandas, each with its form stated here by hand.

Writes logs.json; with --check, compares the file with figures made anew.

Nothing is detected: separator, decimal mark, form of date, zone and scale of each file are written
down, so that what our reader finds out or is told can be held against it. Zones with summer time
come from the tz database. The files are invented.
"""

import pathlib

import pandas as pd
from kept import write_or_check

LOGS = pathlib.Path(__file__).parent.parent / "logs"
START = pd.Timestamp(1709625600, unit="s", tz="UTC")


def celsius(values):
    return values


def fahrenheit(values):
    return (values - 32) * 5 / 9


def kelvin(values):
    return values - 273.15


def table(name, sep=",", **options):
    return pd.read_csv(LOGS / name, sep=sep, header=None, dtype=str, keep_default_na=False, **options)


def numbers(texts, decimal="."):
    """Cells as numbers; what is none becomes missing."""
    plain = texts.str.replace(r"\s*°?[CF]$", "", regex=True)
    return pd.to_numeric(plain.str.replace(decimal, "."), errors="coerce")


def dates(texts, form, zone, **options):
    at = pd.to_datetime(texts, format=form)
    return at.dt.tz_localize(zone, **options) if at.dt.tz is None else at


def english(texts, months):
    for own, number in months.items():
        texts = texts.str.replace(own, number)
    return texts


def after(seconds):
    return START + pd.to_timedelta(seconds, unit="s")


def us_fahrenheit():
    rows = table("en-us-fahrenheit.csv", skiprows=5)
    return dates(rows[0], "%m/%d/%Y %I:%M %p", "Etc/GMT+5"), {1: fahrenheit(numbers(rows[1]))}


def us_one_evening():
    rows = table("en-us-one-evening.csv", skiprows=1)
    return dates(rows[0], "%m/%d/%Y %I:%M %p", "Etc/GMT+5"), {1: fahrenheit(numbers(rows[1]))}


def us_two_probes():
    rows = table("en-us-two-probes.csv", skiprows=1)
    at = dates(rows[1] + " " + rows[2], "%m/%d/%y %I:%M:%S %p", "Etc/GMT+5")
    return at, {column: fahrenheit(numbers(rows[column])) for column in (3, 4)}


def us_clock_of_twelve():
    rows = table("en-us-clock-of-twelve.csv", skiprows=1)
    half = ["AM"] * 3 + ["PM"] * (len(rows) - 3)
    at = dates(rows[0] + " " + rows[1] + " " + pd.Series(half), "%m/%d/%Y %I:%M %p", "Etc/GMT+7")
    return at, {2: celsius(numbers(rows[2]))}


def gb_thousands():
    rows = pd.read_csv(LOGS / "en-gb-thousands.csv", thousands=",")
    return after(rows.iloc[:, 0]), {1: rows.iloc[:, 1]}


def us_spring_night():
    rows = table("en-us-spring-night.csv", skiprows=1)
    return dates(rows[0], "%Y-%m-%d %H:%M:%S", "America/New_York"), {1: numbers(rows[1])}


def de_latin_1():
    rows = table("de-latin-1.csv", ";", skiprows=4, encoding="latin-1")
    return dates(rows[0] + " " + rows[1], "%d.%m.%Y %H:%M", "Etc/GMT-1"), {2: numbers(rows[2], ",")}


def de_ohne_kopf():
    rows = table("de-ohne-kopf.csv", ";", encoding="utf-8-sig")
    return dates(rows[0], "%d.%m.%y %H:%M:%S", "Etc/GMT-1"), {1: numbers(rows[1], ",")}


def de_monatsname():
    rows = table("de-monatsname.txt", "\t", skiprows=1, encoding="utf-16")
    at = dates(english(rows[0], {". März": " 3"}), "%d %m %Y %H:%M", "Etc/GMT-1")
    return at, {column: numbers(rows[column], ",") for column in (1, 2)}


def de_herbstnacht():
    rows = table("de-herbstnacht.csv", ";", skiprows=1)
    at = dates(rows[0], "%d.%m.%Y %H:%M", "Europe/Berlin", ambiguous="infer")
    return at, {1: numbers(rows[1], ",")}


def de_laufzeit():
    rows = table("de-laufzeit.csv", ";", skiprows=2)
    return START + pd.to_timedelta(rows[1]), {2: numbers(rows[2], ",")}


def fr_deux_sondes():
    rows = table("fr-deux-sondes.csv", ";", skiprows=1)
    at = dates(rows[1], "%d/%m/%Y %H:%M:%S", "Etc/GMT-1")
    return at, {column: numbers(rows[column], ",") for column in (2, 3)}


def fr_mois():
    rows = table("fr-mois.csv", ";", skiprows=2)
    return dates(english(rows[0], {"août": "8"}), "%d %m %Y %Hh%M", "Etc/GMT-2"), {1: numbers(rows[1], ",")}


def fr_un_matin():
    rows = table("fr-un-matin.txt", "\t", skiprows=1)
    return dates(rows[0] + " " + rows[1], "%d/%m/%y %H:%M", "Etc/GMT-1"), {2: numbers(rows[2], ",")}


def es_nevera():
    rows = table("es-nevera.csv", ";", skiprows=1)
    texts = english(rows[0], {"a. m.": "AM", "p. m.": "PM"})
    return dates(texts, "%d/%m/%Y %I:%M %p", "Etc/GMT-1"), {1: numbers(rows[1], ",")}


def es_mes():
    rows = table("es-mes.txt", "|", skiprows=1)
    at = dates(english(rows[0], {" de septiembre de ": " 9 "}), "%d %m %Y %H:%M", "Etc/GMT-2")
    return at, {1: numbers(rows[1], ",")}


def sv_nyast_forst():
    rows = table("sv-nyast-forst.csv", ";", skiprows=1).drop_duplicates().iloc[::-1]
    return dates(rows[0], "%Y-%m-%d %H:%M:%S", "Etc/GMT-1"), {1: numbers(rows[1], ",")}


def iso(name, sep):
    rows = table(name, sep, skiprows=1)
    return pd.to_datetime(rows[0], utc=True), {1: numbers(rows[1])}


def unix(name, sep, unit, skip):
    rows = table(name, sep, skiprows=skip)
    values = numbers(rows[1])
    return pd.to_datetime(pd.to_numeric(rows[0]), unit=unit, utc=True), {1: values.where(values > -90)}


def excel_tage():
    rows = table("excel-tage.csv", ";", skiprows=1)
    days = pd.to_timedelta(numbers(rows[0], ","), unit="D").dt.round("ms")
    return (pd.Timestamp("1899-12-30") + days).dt.tz_localize("Etc/GMT-1"), {1: numbers(rows[1], ",")}


def elapsed_minutes():
    rows = table("elapsed-minutes.csv", skiprows=1)
    return after(numbers(rows[0]) * 60), {1: numbers(rows[1])}


def elapsed_of_what():
    rows = table("elapsed-of-what.txt", r"\s+")
    return after(numbers(rows[0]) * 3600), {1: fahrenheit(numbers(rows[1]))}


def minutes_and_seconds():
    rows = table("minutes-and-seconds.txt", "\t")
    return START + pd.to_timedelta("00:" + rows[0]), {1: numbers(rows[1])}


def in_kelvin():
    rows = table("kelvin.txt", r"\s+", skiprows=1)
    return dates(rows[0] + " " + rows[1], "%y/%m/%d %H:%M", "UTC"), {2: kelvin(numbers(rows[2]))}


def two_sessions():
    rows = table("two-sessions.csv", names=range(4), skiprows=1)
    rows = rows[rows[0].str.isdigit()]
    return dates(rows[1], "%Y-%m-%d %H:%M:%S", "UTC"), {2: numbers(rows[2])}


def time_of_day():
    rows = table("time-of-day.csv", skiprows=1)
    elapsed = pd.to_timedelta(rows[0])
    passed = (elapsed.diff() < pd.Timedelta(0)).cumsum() * pd.Timedelta(days=1)
    return START + elapsed + passed - elapsed.iloc[0], {1: numbers(rows[1])}


FILES = {
    "en-us-fahrenheit.csv": us_fahrenheit,
    "en-us-one-evening.csv": us_one_evening,
    "en-us-two-probes.csv": us_two_probes,
    "en-us-clock-of-twelve.csv": us_clock_of_twelve,
    "en-gb-thousands.csv": gb_thousands,
    "en-us-spring-night.csv": us_spring_night,
    "de-latin-1.csv": de_latin_1,
    "de-ohne-kopf.csv": de_ohne_kopf,
    "de-monatsname.txt": de_monatsname,
    "de-herbstnacht.csv": de_herbstnacht,
    "de-laufzeit.csv": de_laufzeit,
    "fr-deux-sondes.csv": fr_deux_sondes,
    "fr-mois.csv": fr_mois,
    "fr-un-matin.txt": fr_un_matin,
    "es-nevera.csv": es_nevera,
    "es-mes.txt": es_mes,
    "sv-nyast-forst.csv": sv_nyast_forst,
    "iso-utc.csv": lambda: iso("iso-utc.csv", ","),
    "iso-offset.txt": lambda: iso("iso-offset.txt", "|"),
    "unix-seconds.txt": lambda: unix("unix-seconds.txt", " ", "s", 0),
    "unix-milliseconds.csv": lambda: unix("unix-milliseconds.csv", ",", "ms", 1),
    "excel-tage.csv": excel_tage,
    "elapsed-minutes.csv": elapsed_minutes,
    "elapsed-of-what.txt": elapsed_of_what,
    "minutes-and-seconds.txt": minutes_and_seconds,
    "kelvin.txt": in_kelvin,
    "two-sessions.csv": two_sessions,
    "time-of-day.csv": time_of_day,
}


def points(at, values):
    seconds = (pd.Series(at).reset_index(drop=True) - pd.Timestamp(0, tz="UTC")).dt.total_seconds()
    there = zip(seconds, values.reset_index(drop=True))
    return [[round(float(second), 4), round(float(value), 6)] for second, value in there if pd.notna(value)]


def case(name):
    at, series = FILES[name]()
    columns = [{"column": column, "points": points(at, values)} for column, values in series.items()]
    return {"file": name, "series": columns}


if __name__ == "__main__":
    figures = {
        "source": "pandas, with each file's form stated by hand (tests/reference/logs.py)",
        "pandas": pd.__version__,
        "cases": [case(name) for name in FILES],
    }
    write_or_check(__file__, figures)
