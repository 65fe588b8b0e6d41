package dev.stayfixed.obd;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.MethodOrderer;
import org.junit.jupiter.api.Order;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestMethodOrder;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Runs every row of the data files, and then proves that it ran them and which facts have no row here. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@TestMethodOrder(MethodOrderer.OrderAnnotation.class)
class StandardFactsTest {

    /** How a row of each file is read by the real code and put into words. */
    private static final Map<String, Function<Facts.Row, String>> READINGS = new TreeMap<>(Map.ofEntries(
            Map.entry("readiness", FactReadings::readiness),
            Map.entry("counters", FactReadings::counters),
            Map.entry("test-results", FactReadings::testResults),
            Map.entry("scaling", FactReadings::scaling),
            Map.entry("pids", FactReadings::parameter),
            Map.entry("coded-pids", FactReadings::codedParameter),
            Map.entry("bitmaps", FactReadings::bitmap),
            Map.entry("codes", FactReadings::codes),
            Map.entry("groups", FactReadings::groups),
            Map.entry("natures", FactReadings::natures),
            Map.entry("monitor-ids", FactReadings::monitorIds),
            Map.entry("status", FactReadings::status),
            Map.entry("services", FactReadings::services),
            Map.entry("vin", FactReadings::vin),
            Map.entry("public-values", FactReadings::parameter),
            Map.entry("public-answers", FactReadings::answers)));

    /** Numbered facts about control units or repairs that no reading of bytes can show. */
    private static final Map<Integer, String> BELONG_ELSEWHERE = Map.ofEntries(
            Map.entry(65, "which code keeps the freeze frame is the control unit's doing"),
            Map.entry(66, "a misfire or fuel code overwrites the freeze frame: the control unit's doing"),
            Map.entry(67, "erasing the frame with its code is the control unit's doing"),
            Map.entry(69, "what a clear erases is judged between two drives, in verification"),
            Map.entry(70, "what a clear leaves is judged between two drives, in verification"),
            Map.entry(
                    114, "halving before overflow is the control unit's doing; differences are judged in verification"),
            Map.entry(122, "a difference of two snapshots is judged in verification"),
            Map.entry(123, "a difference of two snapshots is judged in verification"),
            Map.entry(124, "a difference of two snapshots is judged in verification"),
            Map.entry(240, "the parameter table holds 80 single checks, numbered 160 to 239"),
            Map.entry(310, "sub-function $14 (fault detection counter) is refused by name, see ScanTest"));

    private final Map<String, Integer> ran = new TreeMap<>();
    private final Set<String> ids = new HashSet<>();

    static Stream<Facts.Row> rows() {
        return READINGS.keySet().stream().flatMap(file -> Facts.read(file).stream());
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    @Order(1)
    void readsAsTheSourceSays(Facts.Row row) {
        ran.merge(row.file(), 1, Integer::sum);
        ids.add(row.id());
        assertTrue(Facts.MARKS.contains(row.mark()), () -> "mark of " + row);
        assertTrue(!row.clause().isBlank(), () -> "source of " + row);
        Function<Facts.Row, String> reading = Objects.requireNonNull(READINGS.get(row.file()));
        assertEquals(row.expected(), reading.apply(row), () -> row.clause());
    }

    @Test
    @Order(2)
    void everyRowRanAndEveryNumberedFactIsAccountedFor() {
        Map<String, Integer> there = new TreeMap<>();
        READINGS.keySet().forEach(file -> there.put(file, Facts.read(file).size()));
        assertEquals(there, ran);
        Set<Integer> missing = new TreeSet<>();
        numberedFacts()
                .filter(id -> !ids.contains("" + id) && !BELONG_ELSEWHERE.containsKey(id))
                .forEach(missing::add);
        assertEquals(Set.of(), missing);
        List<Integer> both = BELONG_ELSEWHERE.keySet().stream()
                .filter(id -> ids.contains("" + id))
                .toList();
        assertEquals(List.of(), both);
    }

    private static Stream<Integer> numberedFacts() {
        return Stream.of(
                        IntStream.rangeClosed(65, 70),
                        IntStream.rangeClosed(80, 95),
                        IntStream.rangeClosed(110, 114),
                        IntStream.rangeClosed(122, 125),
                        IntStream.rangeClosed(130, 240),
                        IntStream.rangeClosed(245, 267),
                        IntStream.rangeClosed(270, 287),
                        IntStream.rangeClosed(290, 310),
                        IntStream.rangeClosed(360, 373))
                .flatMap(IntStream::boxed);
    }
}
