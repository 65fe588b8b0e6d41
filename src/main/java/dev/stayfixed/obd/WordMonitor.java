package dev.stayfixed.obd;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One readiness monitor in words: "Catalyst: ready", "EVAP incomplete", "O2 sensor: n/a". Readiness since the last clear, unless the
 * line says "this drive cycle".
 */
final class WordMonitor {

    private static final Map<String, MonitorGroup> GROUPS = groups();

    private static final Map<String, MonitorState> STATES = states();

    private static final List<String> THIS_CYCLE = List.of(
            "this drive cycle",
            "in this drive cycle",
            "this driving cycle",
            "in this driving cycle",
            "this cycle",
            "in this cycle",
            "this drive",
            "in this drive",
            "current drive cycle",
            "current driving cycle",
            "current cycle",
            "in diesem fahrzyklus",
            "dieser fahrzyklus",
            "en este ciclo",
            "en este ciclo de conduccion",
            "este ciclo de conduccion");

    private static final List<String> SINCE_CLEAR = List.of(
            "since clear",
            "since the clear",
            "since last clear",
            "since the last clear",
            "since codes cleared",
            "since dtcs cleared",
            "since reset",
            "seit dem loschen",
            "desde el borrado");

    private WordMonitor() {}

    private static Map<String, MonitorGroup> groups() {
        Map<String, MonitorGroup> groups = new HashMap<>();
        for (MonitorGroup group : MonitorGroup.values()) {
            add(groups, group, group.label().toLowerCase(java.util.Locale.ROOT));
        }
        add(
                groups,
                MonitorGroup.MISFIRE,
                "misfires",
                "misfire detection",
                "verbrennungsaussetzer",
                "zundaussetzer",
                "fallo de encendido",
                "fallos de encendido");
        add(groups, MonitorGroup.FUEL_SYSTEM, "fuel", "kraftstoffsystem", "sistema de combustible");
        add(
                groups,
                MonitorGroup.COMPONENTS,
                "components",
                "component",
                "comprehensive component",
                "comp component",
                "ccm",
                "komponenten",
                "umfassende komponenten",
                "componentes");
        add(groups, MonitorGroup.CATALYST, "cat", "catalytic converter", "katalysator", "catalizador");
        add(
                groups,
                MonitorGroup.HEATED_CATALYST,
                "htd catalyst",
                "heated cat",
                "beheizter katalysator",
                "catalizador calentado",
                "catalizador calefactado");
        add(
                groups,
                MonitorGroup.EVAPORATIVE_SYSTEM,
                "evap",
                "evap system",
                "evaporative",
                "evaporative emissions",
                "evap emissions",
                "tankentluftung",
                "tankentluftungssystem",
                "sistema evaporativo",
                "sistema evap");
        add(
                groups,
                MonitorGroup.SECONDARY_AIR,
                "secondary air system",
                "secondary air injection",
                "sec air",
                "sekundarluft",
                "sekundarluftsystem",
                "aire secundario");
        add(groups, MonitorGroup.GASOLINE_PARTICULATE_FILTER, "gpf", "petrol particulate filter", "ottopartikelfilter");
        add(
                groups,
                MonitorGroup.OXYGEN_SENSOR,
                "oxygen sensors",
                "o2 sensor",
                "o2 sensors",
                "o2s",
                "lambda sensor",
                "lambdasonde",
                "lambdasonden",
                "sensor de oxigeno",
                "sensores de oxigeno",
                "sonda lambda");
        add(
                groups,
                MonitorGroup.OXYGEN_SENSOR_HEATER,
                "oxygen sensor heaters",
                "o2 sensor heater",
                "o2 sensor heaters",
                "o2 heater",
                "o2s heater",
                "heated oxygen sensor",
                "lambdasondenheizung",
                "calentador del sensor de oxigeno",
                "calentador de sensor de oxigeno");
        add(
                groups,
                MonitorGroup.EGR_VVT,
                "egr",
                "egr system",
                "egr vvt",
                "egr vvt system",
                "egr and vvt",
                "egr and or vvt",
                "vvt",
                "agr",
                "agr system",
                "abgasruckfuhrung",
                "sistema egr");
        add(groups, MonitorGroup.NMHC_CATALYST, "nmhc cat", "nmhc", "nmhc katalysator", "catalizador nmhc");
        add(
                groups,
                MonitorGroup.NOX_AFTERTREATMENT,
                "nox scr",
                "nox scr aftertreatment",
                "nox aftertreatment scr",
                "nox scr monitor",
                "scr",
                "nox nachbehandlung");
        add(
                groups,
                MonitorGroup.BOOST_PRESSURE,
                "boost",
                "boost pressure system",
                "ladedruck",
                "presion de sobrealimentacion");
        add(
                groups,
                MonitorGroup.EXHAUST_GAS_SENSOR,
                "exhaust gas sensors",
                "exhaust sensor",
                "abgassensor",
                "sensor de gases de escape");
        add(
                groups,
                MonitorGroup.PM_FILTER,
                "particulate filter",
                "dpf",
                "pm filter monitoring",
                "partikelfilter",
                "filtro de particulas");
        return Map.copyOf(groups);
    }

    private static void add(Map<String, MonitorGroup> groups, MonitorGroup group, String... names) {
        for (String name : names) {
            groups.put(name, group);
            groups.put(name + " monitor", group);
            groups.put(name + " readiness", group);
        }
    }

    private static Map<String, MonitorState> states() {
        Map<String, MonitorState> states = new HashMap<>();
        for (String word : List.of(
                "ready",
                "complete",
                "completed",
                "is ready",
                "is complete",
                "bereit",
                "vollstandig",
                "abgeschlossen",
                "listo",
                "lista",
                "completo",
                "completado")) {
            states.put(word, MonitorState.COMPLETE);
        }
        for (String word : List.of(
                "not ready",
                "incomplete",
                "not complete",
                "not completed",
                "is not ready",
                "is not complete",
                "nicht bereit",
                "unvollstandig",
                "nicht abgeschlossen",
                "no listo",
                "no lista",
                "incompleto",
                "no completado")) {
            states.put(word, MonitorState.INCOMPLETE);
        }
        for (String word : List.of(
                "na",
                "not supported",
                "unsupported",
                "not available",
                "not applicable",
                "not fitted",
                "nicht unterstutzt",
                "nicht verfugbar",
                "no soportado",
                "no disponible",
                "no aplicable")) {
            states.put(word, MonitorState.NOT_SUPPORTED);
        }
        return Map.copyOf(states);
    }

    static Optional<LineContent> read(Phrase phrase) {
        for (int cut : phrase.cuts()) {
            Scoped subject = Scoped.of(phrase.before(cut));
            Scoped said = Scoped.of(phrase.after(cut));
            MonitorGroup group = GROUPS.get(subject.text());
            MonitorState state = STATES.get(said.text());
            if (group != null && state != null && !(subject.scoped() && said.scoped())) {
                return Optional.of(new LineContent.MonitorWords(
                        new Answer.MonitorStatement(group, state, subject.thisCycle() || said.thisCycle())));
            }
        }
        return Optional.empty();
    }

    /** Words without the end that says of which time they speak. */
    private record Scoped(String text, boolean scoped, boolean thisCycle) {
        static Scoped of(String text) {
            return cut(text, THIS_CYCLE)
                    .map(rest -> new Scoped(rest, true, true))
                    .or(() -> cut(text, SINCE_CLEAR).map(rest -> new Scoped(rest, true, false)))
                    .orElse(new Scoped(text, false, false));
        }

        private static Optional<String> cut(String text, List<String> ends) {
            return ends.stream()
                    .filter(end -> text.endsWith(" " + end))
                    .max(java.util.Comparator.comparingInt(String::length))
                    .map(end -> text.substring(0, text.length() - end.length() - 1));
        }
    }

    static boolean isThisCycle(String text) {
        return THIS_CYCLE.contains(text);
    }
}
