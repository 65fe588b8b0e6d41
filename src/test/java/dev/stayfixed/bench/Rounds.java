package dev.stayfixed.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * Measures several pieces of work side by side: in every round each of them once, so that whatever else the machine does falls on all
 * alike. What counts is the ratio of the medians to that of the first; nothing is asserted.
 */
final class Rounds {

    private static final OperatingSystemMXBean SYSTEM =
            (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    /** Returns something that depends on all it did, so that nothing of it is left out by the compiler. */
    @FunctionalInterface
    interface Work {
        Object run() throws Exception;
    }

    /**
     * Medians of all rounds.
     *
     * @param micros elapsed, for one repetition
     * @param cpuMicros processor time of the whole process meanwhile, likewise
     */
    record Median(String name, double micros, double cpuMicros) {}

    private record Measured(double micros, double cpuMicros) {}

    private record Named(String name, int times, Work work, List<Measured> measured) {
        Median median() {
            return new Median(
                    name,
                    Rounds.median(measured.stream().mapToDouble(Measured::micros)),
                    Rounds.median(measured.stream().mapToDouble(Measured::cpuMicros)));
        }
    }

    private final String title;
    private final int rounds;
    private final List<Named> works = new ArrayList<>();
    private int sink;

    Rounds(String title, int rounds) {
        this.title = title;
        this.rounds = rounds;
    }

    Rounds with(String name, int times, Work work) {
        works.add(new Named(name, times, work, new ArrayList<>()));
        return this;
    }

    /** Runs them all, prints a table in Markdown and gives the medians. */
    List<Median> run() throws Exception {
        int warmUp = rounds / 2 + 1;
        for (int round = 0; round < warmUp + rounds; round++) {
            for (Named named : works) {
                Measured measured = once(named.work(), named.times());
                if (round >= warmUp) {
                    named.measured().add(measured);
                }
            }
        }
        List<Median> medians = works.stream().map(Named::median).toList();
        print(medians);
        return medians;
    }

    /** Processor time of the whole process so far. */
    static long cpuNanos() {
        return SYSTEM.getProcessCpuTime();
    }

    private Measured once(Work work, int times) throws Exception {
        long cpu = SYSTEM.getProcessCpuTime();
        long start = System.nanoTime();
        for (int i = 0; i < times; i++) {
            sink += String.valueOf(work.run()).length();
        }
        long took = System.nanoTime() - start;
        return new Measured(took / 1e3 / times, (SYSTEM.getProcessCpuTime() - cpu) / 1e3 / times);
    }

    private static double median(DoubleStream values) {
        double[] sorted = values.sorted().toArray();
        return sorted[sorted.length / 2];
    }

    private void print(List<Median> medians) {
        double first = medians.get(0).micros();
        System.out.printf("%n## %s (%d rounds, %d)%n", title, rounds, sink & 1);
        System.out.println("| what | median µs | CPU µs | times the first |");
        System.out.println("|---|---|---|---|");
        medians.forEach(m -> System.out.printf(
                "| %s | %.1f | %.1f | %.2f |%n", m.name(), m.micros(), m.cpuMicros(), m.micros() / first));
    }
}
