package dev.stayfixed.obd;

import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The malfunction indicator lamp in words: "MIL: off", "check engine light is on". Blinking is on. */
final class WordLamp {

    private static final Set<String> NAMES = Set.of(
            "mil",
            "mil lamp",
            "mil status",
            "mil state",
            "mil light",
            "lamp",
            "lamp status",
            "cel",
            "cel status",
            "check engine",
            "check engine light",
            "check engine lamp",
            "check engine light status",
            "engine light",
            "engine lamp",
            "malfunction indicator",
            "malfunction indicator lamp",
            "malfunction indicator light",
            "malfunction indicator lamp mil",
            "motorkontrollleuchte",
            "motorkontrolleuchte",
            "motorkontrolllampe",
            "mkl",
            "mil lampe",
            "testigo mil",
            "luz mil",
            "testigo del motor",
            "testigo de motor",
            "luz check engine",
            "luz de check engine",
            "estado mil",
            "estado de mil");

    private static final Map<String, Boolean> STATES = Map.ofEntries(
            Map.entry("on", true),
            Map.entry("is on", true),
            Map.entry("commanded on", true),
            Map.entry("lit", true),
            Map.entry("flashing", true),
            Map.entry("is flashing", true),
            Map.entry("blinking", true),
            Map.entry("is blinking", true),
            Map.entry("an", true),
            Map.entry("ein", true),
            Map.entry("ist an", true),
            Map.entry("blinkt", true),
            Map.entry("leuchtet", true),
            Map.entry("encendido", true),
            Map.entry("encendida", true),
            Map.entry("off", false),
            Map.entry("is off", false),
            Map.entry("commanded off", false),
            Map.entry("aus", false),
            Map.entry("ist aus", false),
            Map.entry("apagado", false),
            Map.entry("apagada", false));

    private WordLamp() {}

    static Optional<LineContent> read(Phrase phrase) {
        for (int cut : phrase.cuts()) {
            Boolean on = STATES.get(phrase.after(cut));
            if (on != null && NAMES.contains(phrase.before(cut))) {
                return Optional.of(new LineContent.LampWords(on));
            }
        }
        return Optional.empty();
    }
}
