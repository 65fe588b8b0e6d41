package dev.stayfixed.obd;

import dev.stayfixed.obd.Answer.CodeList.Kind;
import dev.stayfixed.reason.Part;
import dev.stayfixed.reason.Reason;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A whole pasted scan: many lines, in any order, from any number of control units. Reading one never fails as a whole: each line
 * says what became of it.
 */
public final class Scan {

    /** Lines beyond this number are kept and shown as not understood. */
    public static final int MAX_LINES = 10_000;

    /** Characters; enough for the longest answer that ISO 15765-2 can carry. A longer line is shown as not understood. */
    public static final int MAX_LINE_LENGTH = 16_384;

    /** Whether a code stands in a list; unknown unless that list was read. */
    public enum Presence {
        PRESENT,
        ABSENT,
        UNKNOWN
    }

    /**
     * A pasted line and what became of it.
     *
     * @param number one-based
     * @param text the line as pasted
     * @param explanation what was understood, or what was found and what was expected
     */
    public record Line(int number, String text, Outcome outcome, Reason explanation) {
        public enum Outcome {
            UNDERSTOOD,
            PART_OF_MESSAGE,
            IGNORED,
            NOT_UNDERSTOOD
        }
    }

    /** An understood message and who sent it: a CAN or older header in hex, or "" where the paste shows none. */
    public record Heard(String unit, Answer answer) {}

    /** Bits 1 and 6 of the status byte: failed, and not completed, in this operation cycle. */
    private static final int THIS_CYCLE = 0x42;

    /** Bits 4 and 6: not completed since the clear, and not in this cycle. */
    private static final int UNTESTED = 0x50;

    private final Explanations explanations;
    private final List<Reading> readings;
    private final Set<Kind> doubtful;
    private final List<List<Integer>> unanswered;

    private final Speakers speakers;

    Scan(Explanations explanations, List<Reading> readings, Set<Kind> doubtful, List<List<Integer>> unanswered) {
        this(explanations, readings, doubtful, unanswered, Speakers.ANY);
    }

    private Scan(
            Explanations explanations,
            List<Reading> readings,
            Set<Kind> doubtful,
            List<List<Integer>> unanswered,
            Speakers speakers) {
        this.explanations = explanations;
        this.readings = List.copyOf(readings);
        this.doubtful = Set.copyOf(doubtful);
        this.unanswered = unanswered.stream().map(List::copyOf).toList();
        this.speakers = speakers;
    }

    /**
     * Reads whatever was pasted, and never fails: what is not understood is kept and says so in its line. At most {@link #MAX_LINES}
     * lines of {@link #MAX_LINE_LENGTH} characters are read.
     */
    public static Scan read(String pasted) {
        return ScanReader.read(pasted);
    }

    /** Two scans are alike where the same was pasted, and the same units are listened to. */
    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Scan scan
                        && explanations.texts().equals(scan.explanations.texts())
                        && doubtful.equals(scan.doubtful)
                        && readings.size() == scan.readings.size()
                        && speakers.units().equals(scan.speakers.units())
                        && speakers.nameless() == scan.speakers.nameless());
    }

    @Override
    public int hashCode() {
        return explanations.texts().hashCode();
    }

    /** Every line of the paste, in its order. */
    public List<Line> lines() {
        return explanations.lines();
    }

    /** How many characters were pasted, without the ends of the lines. */
    public int length() {
        return explanations.texts().stream().mapToInt(String::length).sum();
    }

    /** Every answer that was understood, in the order in which it began. */
    public List<Heard> heard() {
        return readings.stream().map(Reading::heard).toList();
    }

    /** The requests that no control unit answered (NO DATA), from the service byte on; only those that the paste shows. */
    public List<List<Integer>> unanswered() {
        return unanswered;
    }

    /** The control units heard, by their headers in hex; "" where lines show none. */
    public Set<String> units() {
        return readings.stream().map(Reading::unit).collect(Collectors.toUnmodifiableSet());
    }

    /** Those that report readiness or codes of their own, so that they may own a code. */
    public Set<String> unitsWithMonitors() {
        return units(reading -> reading.answer() instanceof Answer.ReadinessReport
                || reading.answer() instanceof Answer.CodeList
                || reading.answer() instanceof Answer.CodeStatuses);
    }

    /** Those that list the code: in $03, $07 or $0A. */
    public Set<String> unitsListing(TroubleCode code) {
        return units(reading -> reading.answer() instanceof Answer.CodeList list
                && list.codes().stream().anyMatch(code::sameFaultAs));
    }

    /** Those that state a status byte of the code: in $19. */
    public Set<String> unitsStating(TroubleCode code) {
        return units(reading -> reading.answer() instanceof Answer.CodeStatuses list
                && list.statuses().keySet().stream().anyMatch(code::sameFaultAs));
    }

    /** Those whose PID $01 or $41 says that they watch this group. */
    public Set<String> unitsWatching(MonitorGroup group) {
        return units(reading -> reading.answer() instanceof Answer.ReadinessReport report
                && report.readiness().supports(group));
    }

    private Set<String> units(Predicate<Reading> those) {
        return readings.stream().filter(those).map(Reading::unit).collect(Collectors.toUnmodifiableSet());
    }

    /**
     * What these control units said, and nothing that another one said: a code is absent only where each of them denies it.
     *
     * @param byLists whether their lists of services $03, $07 and $0A count, or only what $19 says
     * @param nameless how many control units have to answer where no header tells them apart, so that none stayed silent
     */
    public Scan of(Set<String> units, boolean byLists, int nameless) {
        List<Reading> own = readings.stream()
                .filter(reading -> units.contains(reading.unit()))
                .filter(reading -> byLists || !(reading.answer() instanceof Answer.CodeList))
                .toList();
        return new Scan(explanations, own, doubtful, unanswered, new Speakers(units, nameless, readings));
    }

    /**
     * Who has to deny a code, each for itself.
     *
     * @param all what every unit said: of the car as a whole, such as its odometer, any of them may speak
     */
    private record Speakers(Set<String> units, int nameless, List<Reading> all) {
        private static final Speakers ANY = new Speakers(Set.of(), 0, List.of());
    }

    /** $03, or bit 3 of the $19 status; absent only where that list was read in full. */
    public Presence confirmed(TroubleCode code) {
        return presence(Kind.CONFIRMED, code);
    }

    /** $07, or bit 2 of the $19 status; absent only where that list was read in full. */
    public Presence pending(TroubleCode code) {
        return presence(Kind.PENDING, code);
    }

    /** $0A, or $19 sub-function $15 or $55; absent only where that list was read in full. */
    public Presence permanent(TroubleCode code) {
        return presence(Kind.PERMANENT, code);
    }

    private Presence presence(Kind kind, TroubleCode code) {
        Presence of = presence(readings, kind, code);
        if (of != Presence.ABSENT) {
            return of;
        }
        boolean eachDenies = speakers.units().stream()
                .map(unit -> readings.stream()
                        .filter(reading -> reading.unit().equals(unit))
                        .toList())
                .allMatch(own -> presence(own, kind, code) == Presence.ABSENT);
        return eachDenies && (status(code).isPresent() || !someoneIsSilent(kind)) ? Presence.ABSENT : Presence.UNKNOWN;
    }

    private boolean someoneIsSilent(Kind kind) {
        List<Answer> nameless = readings.stream()
                .filter(reading -> reading.unit().isEmpty())
                .map(Reading::answer)
                .toList();
        long lists = nameless.stream()
                .filter(answer -> answer instanceof Answer.CodeList list && list.kind() == kind)
                .count();
        long statuses =
                nameless.stream().filter(Answer.CodeStatuses.class::isInstance).count();
        return !nameless.isEmpty() && Math.max(lists, statuses) < speakers.nameless();
    }

    private Presence presence(List<Reading> of, Kind kind, TroubleCode code) {
        return new CodePresence(of, kind, code).presence(doubtful.contains(kind) && !eachGaveItsList(kind));
    }

    /** A line that could not be read takes nothing from the counted lists of those that have to deny. */
    private boolean eachGaveItsList(Kind kind) {
        return !speakers.units().isEmpty()
                && speakers.units().stream()
                        .allMatch(unit -> readings.stream()
                                .anyMatch(reading -> reading.unit().equals(unit) && reading.isCountedList(kind)));
    }

    /**
     * How many control units answered without a header, as far as it shows: the most answers to one service that follow each other, or
     * reports that name different monitors.
     */
    public int namelessUnits() {
        List<Reading> nameless = readings.stream()
                .filter(reading -> reading.unit().isEmpty() && reading.extent() != Reading.Extent.MENTION)
                .toList();
        int most = nameless.isEmpty() ? 0 : 1;
        int run = 0;
        for (int at = 1; at < nameless.size(); at++) {
            run = areAlike(nameless.get(at - 1).answer(), nameless.get(at).answer()) ? run + 1 : 0;
            most = Math.max(most, run + 1);
        }
        return Math.max(most, Math.max(watchers(nameless, false), watchers(nameless, true)));
    }

    private static boolean areAlike(Answer one, Answer other) {
        if (one instanceof Answer.CodeList list) {
            return other instanceof Answer.CodeList next && list.kind() == next.kind();
        }
        return one instanceof Answer.CodeStatuses list
                && other instanceof Answer.CodeStatuses next
                && list.requestedMask().isPresent()
                && list.requestedMask().equals(next.requestedMask());
    }

    /** Reports that name different monitors come from different units; the same one read twice does not. */
    private static int watchers(List<Reading> of, boolean thisCycle) {
        return (int) of.stream()
                .map(Reading::answer)
                .filter(answer -> answer instanceof Answer.ReadinessReport report && report.thisCycle() == thisCycle)
                .map(answer -> ((Answer.ReadinessReport) answer).readiness().supported())
                .distinct()
                .count();
    }

    /**
     * The status byte of this very code, where a $19 answer lists it. Where several records fit it, the one that speaks most against
     * the repair.
     */
    public Optional<StatusByte> status(TroubleCode code) {
        return answers(Answer.CodeStatuses.class)
                .flatMap(list -> list.statuses().entrySet().stream())
                .filter(entry -> code.sameFaultAs(entry.getKey()))
                .map(Map.Entry::getValue)
                .reduce(StatusByte::worse);
    }

    /**
     * The status byte of a code that a $19 sub-function $02 answer leaves out: no bit of the mask it was asked by is set. Only where
     * the paste shows that mask, it covers the bits of this cycle, and the list was read in full. It says nothing of a code that the
     * control unit does not know, so hold it only against a code that it listed before.
     */
    public Optional<StatusByte> unlistedStatus(TroubleCode code) {
        boolean nameless = readings.stream().anyMatch(reading -> reading.unit().isEmpty());
        boolean mayBeAnothers = nameless && (speakers.nameless() > 1 || doubtful.containsAll(CodeListDoubt.ALL));
        if (status(code).isPresent() || mayBeAnothers) {
            return Optional.empty();
        }
        List<Reading> whole = readings.stream()
                .filter(reading -> reading.extent() == Reading.Extent.WHOLE)
                .filter(reading -> reading.answer() instanceof Answer.CodeStatuses list
                        && (list.requestedMask().orElse(0) & THIS_CYCLE) == THIS_CYCLE)
                .toList();
        boolean eachSaysSo = speakers.units().size() < 2
                || speakers.units().stream()
                        .allMatch(unit ->
                                whole.stream().anyMatch(list -> list.unit().equals(unit)));
        return whole.stream()
                .filter(list -> eachSaysSo)
                .map(list -> (Answer.CodeStatuses) list.answer())
                .map(list -> list.availability() & list.requestedMask().orElse(0))
                .reduce((one, other) -> one & other)
                .map(bits -> new StatusByte(0, bits));
    }

    /**
     * A $19 answer under a mask lists a code whose test has not run: this unit does not leave untested codes out, so one that it leaves
     * out has run. Sub-function $0A lists every code, and shows nothing of that.
     */
    public boolean listsUntestedCodes() {
        return answers(Answer.CodeStatuses.class)
                .filter(list -> list.requestedMask().isPresent())
                .flatMap(list -> list.statuses().values().stream())
                .anyMatch(status -> status.value() != 0 && (status.value() & ~UNTESTED) == 0);
    }

    /** $01 PID $01, all control units merged: what one calls incomplete is incomplete. */
    public Optional<Readiness> sinceClear() {
        return readiness(false);
    }

    /** $01 PID $41, merged likewise. */
    public Optional<Readiness> thisCycle() {
        return readiness(true);
    }

    /**
     * One monitor since the last clear, from PID $01 or from words; empty where neither names it or they contradict each other. Words
     * may name some monitors and leave out others, of which then nothing is known.
     */
    public Optional<MonitorState> sinceClear(MonitorGroup group) {
        return state(group, false);
    }

    /** One monitor in this driving cycle, from PID $41 or from words that speak of this cycle. */
    public Optional<MonitorState> thisCycle(MonitorGroup group) {
        return state(group, true);
    }

    private Optional<MonitorState> state(MonitorGroup group, boolean thisCycle) {
        Stream<MonitorState> reported = readiness(thisCycle)
                .filter(readiness -> !readiness.supported().isEmpty())
                .map(readiness -> readiness.state(group))
                .stream();
        Stream<MonitorState> stated = answers(Answer.MonitorStatement.class)
                .filter(statement -> statement.group() == group && statement.thisCycle() == thisCycle)
                .map(Answer.MonitorStatement::state);
        return onlyOne(Stream.concat(reported, stated));
    }

    /** Whether the MIL is on, from PID $01 of any control unit or from words; empty where not read or contradicted. */
    public Optional<Boolean> lamp() {
        Stream<Boolean> commanded = sinceClear().map(Readiness::milCommanded).stream();
        return onlyOne(Stream.concat(commanded, answers(Answer.Lamp.class).map(Answer.Lamp::on)));
    }

    /** Somewhere in it the MIL is on, whatever is said besides. */
    public boolean isLampSaidToBeOn() {
        return sinceClear().filter(Readiness::milCommanded).isPresent()
                || answers(Answer.Lamp.class).anyMatch(Answer.Lamp::on);
    }

    private static <T> Optional<T> onlyOne(Stream<T> said) {
        List<T> different = said.distinct().toList();
        return different.size() == 1 ? Optional.of(different.get(0)) : Optional.empty();
    }

    private Optional<Readiness> readiness(boolean thisCycle) {
        return reports(thisCycle).map(UnitReadiness::readiness).reduce(Readiness::merge);
    }

    private record UnitReadiness(String unit, Readiness readiness) {}

    /** One report a control unit, the last one where it was asked again; without header each report is another unit's. */
    private Stream<UnitReadiness> reports(boolean thisCycle) {
        Map<String, UnitReadiness> last = new LinkedHashMap<>();
        for (Reading reading : readings) {
            if (reading.answer() instanceof Answer.ReadinessReport report && report.thisCycle() == thisCycle) {
                String key = reading.unit().isEmpty() ? "#" + reading.line() : reading.unit();
                last.put(key, new UnitReadiness(reading.unit(), report.readiness()));
            }
        }
        return last.values().stream();
    }

    /** All service $06 tests of all control units. */
    public List<TestResult> testResults() {
        return answers(Answer.TestResults.class)
                .flatMap(answer -> answer.results().stream())
                .toList();
    }

    /** The in-use counters heard first. */
    public Optional<InUseCounters> inUse() {
        return answers(Answer.InUse.class).map(Answer.InUse::counters).findFirst();
    }

    /** A service $01 parameter in its unit; where several control units answer, the first heard. */
    public OptionalDouble parameter(int pid) {
        OptionalDouble own = parameter(readings, pid);
        return own.isPresent() ? own : parameter(speakers.all(), pid);
    }

    private static OptionalDouble parameter(List<Reading> readings, int pid) {
        for (int i = 0; i < readings.size(); i++) {
            if (readings.get(i).answer() instanceof Answer.Parameter parameter
                    && parameter.pid() == pid
                    && parameter.value().isPresent()) {
                return parameter.value();
            }
        }
        return OptionalDouble.empty();
    }

    /** IGNCNTR of service $09: every unit counts the ignition cycles of the car. */
    public OptionalInt ignitionCycles() {
        return Stream.concat(answers(Answer.InUse.class), of(speakers.all(), Answer.InUse.class))
                .map(answer -> answer.counters().ignitionCycles())
                .filter(OptionalInt::isPresent)
                .findFirst()
                .orElse(OptionalInt.empty());
    }

    /** A parameter of freeze frame 0. */
    public OptionalDouble freezeFrame(int pid) {
        return value(frozen(), pid);
    }

    /** The code that stored freeze frame 0 ($02 PID $02); 0000 there means that no frame is stored. */
    public Optional<TroubleCode> freezeFrameCode() {
        return frozen().filter(
                        parameter -> parameter.pid() == 2 && !parameter.raw().equals("00 00"))
                .map(parameter ->
                        HexTokens.bytes(parameter.raw(), 0, parameter.raw().length()))
                .map(bytes -> TroubleCode.ofBytes(bytes.get(0), bytes.get(1)))
                .findFirst();
    }

    private Stream<Answer.Parameter> frozen() {
        return answers(Answer.FreezeFrameParameter.class)
                .filter(answer -> answer.frame() == 0)
                .map(Answer.FreezeFrameParameter::parameter);
    }

    private static OptionalDouble value(Stream<Answer.Parameter> parameters, int pid) {
        return parameters
                .filter(parameter -> parameter.pid() == pid)
                .flatMapToDouble(parameter -> parameter.value().stream())
                .findFirst();
    }

    /** The number heard first. */
    public Optional<Vin> vin() {
        return answers(Answer.VehicleIdentification.class)
                .map(Answer.VehicleIdentification::vin)
                .findFirst();
    }

    /** A $19 answer with status bytes is among the answers, whatever it lists. */
    public boolean hasStatuses() {
        return answers(Answer.CodeStatuses.class).findAny().isPresent();
    }

    /** A list of permanent codes is among the answers, whatever it holds. */
    public boolean asksForPermanentCodes() {
        return answers(Answer.CodeList.class).anyMatch(list -> list.kind() == Kind.PERMANENT);
    }

    /** A $44 or $54 answer is among the lines. */
    public boolean codesCleared() {
        return answers(Answer.CodesCleared.class).findAny().isPresent();
    }

    /** Everything else was answered before the clear, as far as the order of the lines shows. */
    public boolean endsWithTheClear() {
        return !readings.isEmpty() && readings.get(readings.size() - 1).answer() instanceof Answer.CodesCleared;
    }

    /** Where the record disagrees with itself (MIL on with no code, failed but not completed). */
    public List<Reason> contradictions() {
        return Stream.of(
                        reports(false).map(this::contradiction).flatMap(Optional::stream),
                        reports(false).map(this::countContradiction).flatMap(Optional::stream),
                        lampContradiction().stream(),
                        statusContradictions())
                .flatMap(found -> found)
                .distinct()
                .toList();
    }

    /** A control unit that commands the MIL has a confirmed code: SAE J1979 counts them in the same byte. */
    private Optional<Reason> contradiction(UnitReadiness report) {
        if (!report.readiness().milCommanded() || report.readiness().confirmedCount() > 0) {
            return Optional.empty();
        }
        return Optional.of(by(report.unit(), Reason.of(Contradiction.MIL_WITHOUT_CODE)));
    }

    /** The number of confirmed codes in PID $01 is that of the list of service $03 of the same control unit (SAE J1979). */
    private Optional<Reason> countContradiction(UnitReadiness report) {
        int counted = report.readiness().confirmedCount();
        List<Answer.CodeList> lists = readings.stream()
                .filter(reading -> reading.unit().equals(report.unit()) && reading.extent() == Reading.Extent.WHOLE)
                .map(Reading::answer)
                .filter(answer -> answer instanceof Answer.CodeList list && list.kind() == Kind.CONFIRMED)
                .map(Answer.CodeList.class::cast)
                .toList();
        long listed =
                lists.stream().flatMap(list -> list.codes().stream()).distinct().count();
        boolean mayBeAnothers = report.unit().isEmpty() && Math.max(namelessUnits(), speakers.nameless()) > 1;
        return lists.isEmpty() || mayBeAnothers || listed >= counted
                ? Optional.empty()
                : Optional.of(by(
                        report.unit(),
                        Reason.of(Contradiction.COUNT_AGAINST_LIST, Part.count(counted), Part.count(listed))));
    }

    private Optional<Reason> lampContradiction() {
        boolean inWords = answers(Answer.Lamp.class).findAny().isPresent();
        return inWords && lamp().isEmpty() ? Optional.of(Reason.of(Contradiction.MIL_ON_AND_OFF)) : Optional.empty();
    }

    private Stream<Reason> statusContradictions() {
        return readings.stream()
                .filter(reading -> reading.answer() instanceof Answer.CodeStatuses)
                .flatMap(reading -> ((Answer.CodeStatuses) reading.answer())
                        .statuses().entrySet().stream()
                                .filter(entry -> entry.getValue().isContradictory())
                                .map(entry -> by(
                                        reading.unit(),
                                        Reason.of(
                                                Contradiction.FAILED_NOT_COMPLETED,
                                                Part.verbatim(entry.getKey().text()),
                                                Part.hex(entry.getValue().value())))));
    }

    private static Reason by(String unit, Reason found) {
        return unit.isEmpty() ? found : Reason.of(Contradiction.OF_UNIT, found, Part.verbatim(unit));
    }

    private <A extends Answer> Stream<A> answers(Class<A> type) {
        return of(readings, type);
    }

    private static <A extends Answer> Stream<A> of(List<Reading> readings, Class<A> type) {
        return readings.stream().map(Reading::answer).filter(type::isInstance).map(type::cast);
    }
}
