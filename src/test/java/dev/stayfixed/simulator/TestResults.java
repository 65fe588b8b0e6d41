package dev.stayfixed.simulator;

import dev.stayfixed.simulator.MonitoredCode.Record06;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;

/** Service $06: the latest value of each test; 0/0/0 until it has run since the clear. */
final class TestResults {

    private final SplittableRandom random;
    private final Map<String, Integer> values = new LinkedHashMap<>();

    TestResults(long seed) {
        random = new SplittableRandom(seed ^ 0x06_06);
    }

    void passed(MonitoredCode code) {
        Record06 record = code.record();
        int span = record.max() - record.min();
        keep(code, record.min() + span / 4 + random.nextInt(Math.max(1, span / 4)));
    }

    void failed(MonitoredCode code) {
        Record06 record = code.record();
        int excess = 1 + random.nextInt(Math.max(2, record.max() / 4));
        boolean upwards = record.max() < 0xC000;
        keep(code, upwards ? record.max() + excess : record.min() - 1 - random.nextInt(record.min() / 2));
    }

    private void keep(MonitoredCode code, int value) {
        if (code.record().monitor() != 0) {
            values.put(code.code(), value);
        }
    }

    /** Value, lower and upper limit as sent. */
    int[] of(MonitoredCode code) {
        Integer value = values.get(code.code());
        return value == null
                ? new int[] {0, 0, 0}
                : new int[] {value, code.record().min(), code.record().max()};
    }

    void clear() {
        values.clear();
    }
}
