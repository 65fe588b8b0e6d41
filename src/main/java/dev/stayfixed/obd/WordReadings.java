package dev.stayfixed.obd;

import dev.stayfixed.obd.Answer.CodeList;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What a scan says in words, weighed together once all of it is read: a list of codes counts as whole only where no other words of the
 * scan contradict it or speak of that list in a way that was not understood.
 */
final class WordReadings {

    /** What a control unit of each kind of engine reports in full; filters of petrol engines are left out by most tools. */
    private static final Set<MonitorGroup> SPARK = EnumSet.of(
            MonitorGroup.CATALYST,
            MonitorGroup.HEATED_CATALYST,
            MonitorGroup.EVAPORATIVE_SYSTEM,
            MonitorGroup.SECONDARY_AIR,
            MonitorGroup.OXYGEN_SENSOR,
            MonitorGroup.OXYGEN_SENSOR_HEATER,
            MonitorGroup.EGR_VVT);

    private static final Set<MonitorGroup> COMPRESSION = EnumSet.of(
            MonitorGroup.NMHC_CATALYST,
            MonitorGroup.NOX_AFTERTREATMENT,
            MonitorGroup.BOOST_PRESSURE,
            MonitorGroup.EXHAUST_GAS_SENSOR,
            MonitorGroup.PM_FILTER,
            MonitorGroup.EGR_VVT);

    /** A line in words and what it said. */
    record Said(Reading reading, Reason explanation) {
        /** A "none" that was taken back says nothing. */
        boolean saysSomething() {
            return reading.extent() == Reading.Extent.WHOLE
                    || !(reading.answer() instanceof CodeList list)
                    || !list.codes().isEmpty();
        }
    }

    private record ListLine(int line, CodeList list, boolean whole) {}

    private final List<ListLine> lists = new ArrayList<>();
    private final List<Said> others = new ArrayList<>();
    private final Set<CodeList.Kind> unclear = EnumSet.noneOf(CodeList.Kind.class);

    void add(int line, CodeList list, boolean whole) {
        lists.add(new ListLine(line, list, whole));
    }

    void add(int line, Answer answer, Reason explanation) {
        others.add(new Said(mention(line, answer), Reason.of(LineNote.IN_WORDS, explanation)));
    }

    /** A line that was not understood: the lists it may have spoken of are not known from words. */
    void addUnclear(String text) {
        unclear.addAll(CodeListDoubt.ofWords(text));
    }

    /** Some unit other than the engine's is named: a list in words, which shows no unit, may be its list. */
    void addOtherUnit() {
        unclear.addAll(CodeListDoubt.ALL);
    }

    private static Reading mention(int line, Answer answer) {
        return new Reading(line, new Scan.Heard("", answer), Reading.Extent.MENTION);
    }

    /** Every line in words, with what it is worth beside the others. */
    List<Said> weighed() {
        List<Said> said = new ArrayList<>(others);
        lists.forEach(list -> said.add(weigh(list)));
        return said;
    }

    private Said weigh(ListLine list) {
        Reason codes = CodeListReader.list(list.list());
        if (!list.whole()) {
            return new Said(mention(list.line(), list.list()), Reason.of(LineNote.IN_WORDS_NOT_WHOLE, codes));
        }
        Optional<ListLine> against =
                lists.stream().filter(other -> contradicts(other, list)).findFirst();
        if (against.isPresent()) {
            return new Said(
                    mention(list.line(), list.list()),
                    Reason.of(
                            LineNote.IN_WORDS_DENIED,
                            codes,
                            Part.count(against.get().line())));
        }
        if (unclear.contains(list.list().kind())) {
            return new Said(mention(list.line(), list.list()), Reason.of(LineNote.IN_WORDS_UNCLEAR, codes));
        }
        Reading whole = new Reading(list.line(), new Scan.Heard("", list.list()), Reading.Extent.WHOLE);
        return new Said(whole, Reason.of(LineNote.IN_WORDS_WHOLE, codes));
    }

    private static boolean contradicts(ListLine other, ListLine list) {
        return other.list().kind() == list.list().kind()
                && !(other.whole()
                        ? Set.copyOf(other.list().codes())
                                .equals(Set.copyOf(list.list().codes()))
                        : list.list().codes().containsAll(other.list().codes()));
    }

    /**
     * Readiness as control units report it, where the words state all that such a report holds: every monitor and, since the clear,
     * the lamp and the stored codes too. What is stated in part is known by {@link Scan#thisCycle(MonitorGroup)} and its like alone,
     * because in a report a monitor that is not named is one that the vehicle does not have.
     */
    List<Reading> reports() {
        List<Reading> reports = new ArrayList<>();
        report(true, false, 0).ifPresent(reports::add);
        Set<Boolean> lamp = answers(Answer.Lamp.class).map(Answer.Lamp::on).collect(Collectors.toSet());
        OptionalInt stored = storedCodes();
        if (lamp.size() == 1 && stored.isPresent()) {
            report(false, lamp.contains(true), stored.getAsInt()).ifPresent(reports::add);
        }
        return reports;
    }

    private OptionalInt storedCodes() {
        return weighed().stream()
                .map(Said::reading)
                .filter(reading -> reading.extent() == Reading.Extent.WHOLE)
                .map(Reading::answer)
                .filter(CodeList.class::isInstance)
                .map(CodeList.class::cast)
                .filter(list -> list.kind() == CodeList.Kind.CONFIRMED)
                .mapToInt(list -> list.codes().size())
                .findFirst();
    }

    private Optional<Reading> report(boolean thisCycle, boolean lamp, int stored) {
        Map<MonitorGroup, MonitorState> states = new EnumMap<>(MonitorGroup.class);
        int line = Integer.MAX_VALUE;
        for (Said said : others) {
            if (said.reading().answer() instanceof Answer.MonitorStatement statement
                    && statement.thisCycle() == thisCycle) {
                MonitorState before = states.put(statement.group(), statement.state());
                if (before != null && before != statement.state()) {
                    return Optional.empty();
                }
                line = Math.min(line, said.reading().line());
            }
        }
        boolean spark = states.keySet().containsAll(SPARK);
        boolean all = (spark || states.keySet().containsAll(COMPRESSION))
                && states.keySet()
                        .containsAll(Set.of(MonitorGroup.MISFIRE, MonitorGroup.FUEL_SYSTEM, MonitorGroup.COMPONENTS));
        if (!all) {
            return Optional.empty();
        }
        Set<MonitorGroup> supported = EnumSet.copyOf(states.keySet());
        supported.removeIf(group -> states.get(group) == MonitorState.NOT_SUPPORTED);
        Set<MonitorGroup> incomplete = EnumSet.copyOf(states.keySet());
        incomplete.removeIf(group -> states.get(group) != MonitorState.INCOMPLETE);
        Readiness readiness =
                new Readiness(lamp, stored, spark ? Ignition.SPARK : Ignition.COMPRESSION, supported, incomplete);
        return Optional.of(mention(line, new Answer.ReadinessReport(readiness, thisCycle)));
    }

    private <A extends Answer> java.util.stream.Stream<A> answers(Class<A> type) {
        return others.stream()
                .map(said -> said.reading().answer())
                .filter(type::isInstance)
                .map(type::cast);
    }
}
