package dev.stayfixed.bench;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** All cost benchmarks in one command, or those that are named: {@code mvn -Pbench test-compile exec:java -Dexec.args="fold"}. */
public final class Costs {

    @FunctionalInterface
    private interface Benchmark {
        void run() throws Exception;
    }

    private static final Map<String, Benchmark> ALL = new LinkedHashMap<>();

    static {
        ALL.put("fold", FoldCosts::run);
        ALL.put("case", CaseCosts::run);
        ALL.put("log", LogCosts::run);
        ALL.put("sql", SqlCosts::run);
        ALL.put("scan", ScanCosts::run);
        ALL.put("intake", IntakeCosts::run);
        ALL.put("lists", ListCosts::run);
        ALL.put("drive", DrivePageCosts::run);
        ALL.put("webhooks", WebhookCosts::run);
        ALL.put("start", StartCosts::run);
        ALL.put("restart", RestartCosts::run);
        ALL.put("database", DatabaseCosts::run);
    }

    private Costs() {}

    public static void main(String[] args) throws Exception {
        for (String name : args.length == 0 ? ALL.keySet() : List.of(args)) {
            if (!ALL.containsKey(name)) {
                throw new IllegalArgumentException(
                        "benchmark: found %s, expected one of %s".formatted(name, ALL.keySet()));
            }
            ALL.get(name).run();
        }
    }
}
