package dev.stayfixed.recording;

import static dev.stayfixed.drive.signal.Signal.*;

import dev.stayfixed.drive.signal.Signal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** Words by which loggers name signals, English and German; the first line that fits decides. Common practice, no source. */
final class CommonWords {

    private record Rule(Pattern words, Optional<Signal> signal) {}

    private static final List<Rule> RULES = new ArrayList<>();

    static {
        not(
                "o2|oxygen|lambda|egr|air fuel|afr|torque|timing|fan|transmission|gear|limit|target|desired|with mil|mil on");
        rule("\\bmil\\b|malfunction indicator|check engine", MIL);
        rule("warm ?ups?", WARM_UPS_SINCE_CLEAR);
        rule("(distance|traveled|km).*clear", DISTANCE_SINCE_CLEAR);
        rule("time.*clear", MINUTES_SINCE_CLEAR);
        rule("coolant.*temp|\\bect\\b|coolant$|kühlmittel|kühlwasser|kuehlmittel", COOLANT);
        rule("ambient|outside (air )?temp|exterior (air )?temp|außentemp|aussentemp", AMBIENT);
        rule("cat(alyst|alytic)?.*temp", CATALYST);
        rule("\\boil.*temp|\\beot\\b|öltemp", OIL);
        rule("\\biat\\b|intake.*temp|air temp|ansaugluft", INTAKE_AIR);
        rule("\\brpm\\b|engine speed|engine revolution|drehzahl|\\brevs\\b", ENGINE_SPEED);
        rule("absolute (engine )?load|\\babs load", ABSOLUTE_LOAD);
        rule("(engine|calculated|calc).*load|\\bload\\b|motorlast", LOAD);
        rule("\\bmaf\\b|air flow|airflow|mass flow|luftmasse", AIR_FLOW);
        rule("barometric|barometer|\\bbaro\\b|atmospheric pressure|luftdruck", BAROMETER);
        rule("\\bmap\\b|manifold.*pressure|saugrohrdruck", MANIFOLD_PRESSURE);
        rule("pedal|accelerator", PEDAL);
        rule("throttle|\\btps\\b|drosselklappe", THROTTLE);
        rule("fuel (tank )?level|tank level|tankinhalt|tankfüllung", FUEL_LEVEL);
        rule("(short term|stft|short).*(trim|stft).*2|stft ?2", SHORT_TRIM_2);
        rule("(long term|ltft|long).*(trim|ltft).*2|ltft ?2", LONG_TRIM_2);
        rule("short term.*trim|stft", SHORT_TRIM);
        rule("long term.*trim|ltft", LONG_TRIM);
        rule("purge", PURGE);
        rule("evap.*press|vapou?r press", EVAP_PRESSURE);
        rule("module volt|battery volt|\\bvoltage\\b|bordspannung", MODULE_VOLTAGE);
        rule("run ?time|time since (engine )?start", RUN_TIME);
        rule("odometer|kilometerstand|mileage", ODOMETER);
        rule("(trip|cumulative).*dist|dist.*(trip|cumulative|since start)", TRIP_DISTANCE);
        rule("\\bspeed\\b|velocity|\\bvss\\b|geschwindigkeit|\\bkm/?h\\b|\\bmph\\b", VEHICLE_SPEED);
    }

    private CommonWords() {}

    private static void rule(String words, Signal signal) {
        RULES.add(new Rule(Pattern.compile(words), Optional.of(signal)));
    }

    private static void not(String words) {
        RULES.add(new Rule(Pattern.compile("\\b(" + words + ")\\b"), Optional.empty()));
    }

    static Optional<Signal> named(HeaderText header) {
        return RULES.stream()
                .filter(rule -> rule.words().matcher(header.words()).find())
                .findFirst()
                .flatMap(Rule::signal);
    }
}
