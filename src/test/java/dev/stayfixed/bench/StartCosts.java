package dev.stayfixed.bench;

import dev.stayfixed.StayfixedApplication;
import java.io.IOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import java.util.function.ToDoubleFunction;
import org.springframework.util.FileSystemUtils;

/**
 * From the start of a process to its first answer, against an empty application with the same starters; with
 * {@code -Dstayfixed.jar=target/stayfixed.jar} also what the README says of the packaged jar. Memory is what is resident after that
 * answer, which only Linux tells.
 */
final class StartCosts {

    private static final int ROUNDS = Integer.getInteger("stayfixed.starts", 7);
    private static final Duration PATIENCE = Duration.ofMinutes(5);
    private static final String DATABASE = "jdbc:h2:file:%s;WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;MODE=PostgreSQL";

    private final Path folder;
    private final HttpClient http = HttpClient.newHttpClient();
    private final Map<String, Kind> kinds = new LinkedHashMap<>();

    private record Kind(String first, List<String> command, List<Start> starts) {
        double median(ToDoubleFunction<Start> of) {
            double[] sorted = starts.stream().mapToDouble(of).sorted().toArray();
            return sorted[sorted.length / 2];
        }
    }

    /** Seconds, seconds of processor time, megabytes. */
    private record Start(double seconds, double cpu, double resident) {}

    private StartCosts(Path folder) {
        this.folder = folder;
    }

    static void run() throws Exception {
        Path folder = Files.createTempDirectory("stayfixed-start");
        try {
            new StartCosts(folder).measure();
        } finally {
            FileSystemUtils.deleteRecursively(folder);
        }
    }

    private void measure() throws Exception {
        String classes = System.getProperty("java.class.path");
        String empty = "an empty application";
        add(
                empty,
                "/",
                List.of("-cp", classes, EmptyApplication.class.getName(), "--spring.config.location=" + emptyFolder()));
        add("this one", "/api/v1/jobs", List.of("-cp", classes, StayfixedApplication.class.getName()));
        String jar = System.getProperty("stayfixed.jar", "");
        if (!jar.isEmpty()) {
            addJar(Path.of(jar));
        }
        for (int round = 0; round <= ROUNDS; round++) {
            for (Kind kind : kinds.values()) {
                Start start = start(kind);
                // the first round makes the databases
                if (round > 0) {
                    kind.starts().add(start);
                }
            }
        }
        print(Objects.requireNonNull(kinds.get(empty)));
    }

    private String emptyFolder() throws IOException {
        return Files.createDirectory(folder.resolve("nothing")) + "/";
    }

    private void addJar(Path jar) throws IOException, InterruptedException {
        add("the jar", "/api/v1/jobs", List.of("-jar", jar.toString()));
        Path fast = folder.resolve("fast");
        Path archive = fast.resolve("classes.jsa");
        String extracted = fast.resolve(jar.getFileName()).toString();
        once(List.of("-Djarmode=tools", "-jar", jar.toString(), "extract", "--destination", fast.toString()));
        List<String> training = new ArrayList<>(
                List.of("-XX:ArchiveClassesAtExit=" + archive, "-Dspring.context.exit=onRefresh", "-jar", extracted));
        training.addAll(settings("training", 0));
        once(training);
        add("extracted", "/api/v1/jobs", List.of("-jar", extracted));
        add(
                "extracted, with its archive of classes",
                "/api/v1/jobs",
                List.of("-XX:SharedArchiveFile=" + archive, "-jar", extracted));
    }

    private void add(String name, String first, List<String> command) {
        kinds.put(name, new Kind(first, command, new ArrayList<>()));
    }

    private void once(List<String> arguments) throws IOException, InterruptedException {
        Process process = java(arguments);
        if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS) || process.exitValue() != 0) {
            process.destroyForcibly();
            throw new IllegalStateException(arguments + " did not end well:\n" + log());
        }
    }

    private List<String> settings(String database, int port) {
        return List.of(
                "--server.port=" + port,
                "--server.address=127.0.0.1",
                "--spring.datasource.url="
                        + DATABASE.formatted(folder.resolve(database).toAbsolutePath()));
    }

    private Start start(Kind kind) throws IOException, InterruptedException {
        int port = free();
        List<String> arguments = new ArrayList<>(kind.command());
        arguments.addAll(settings("of-" + List.copyOf(kinds.values()).indexOf(kind), port));
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + kind.first()))
                .build();
        long begin = System.nanoTime();
        Process process = java(arguments);
        try {
            while (!answers(request)) {
                if (!process.isAlive() || System.nanoTime() - begin > PATIENCE.toNanos()) {
                    throw new IllegalStateException(arguments + " never answered:\n" + log());
                }
                TimeUnit.MILLISECONDS.sleep(5);
            }
            double seconds = (System.nanoTime() - begin) / 1e9;
            double cpu = process.info().totalCpuDuration().orElseThrow().toMillis() / 1e3;
            return new Start(seconds, cpu, resident(process.pid()));
        } finally {
            process.destroy();
            if (!process.waitFor(1, TimeUnit.MINUTES)) {
                process.destroyForcibly().waitFor();
            }
        }
    }

    private boolean answers(HttpRequest request) throws InterruptedException {
        try {
            return http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode() == 200;
        } catch (IOException notYet) {
            return false;
        }
    }

    private Process java(List<String> arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(arguments);
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("log").toFile())
                .start();
    }

    private String log() throws IOException {
        return Files.readString(folder.resolve("log"));
    }

    private static double resident(long pid) throws IOException {
        Path status = Path.of("/proc", Long.toString(pid), "status");
        if (!Files.exists(status)) {
            return Double.NaN;
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith("VmRSS:"))
                .mapToDouble(line -> Double.parseDouble(line.replaceAll("\\D", "")) / 1024)
                .findFirst()
                .orElse(Double.NaN);
    }

    private static int free() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private void print(Kind empty) {
        System.out.printf("%n## start to first answer (%d rounds, medians)%n", ROUNDS);
        System.out.println("| what | s | CPU s | resident MB | times the first: s, CPU s, MB |\n|---|---|---|---|---|");
        kinds.forEach((name, kind) -> System.out.printf(
                "| %s | %.2f | %.2f | %.0f | %.2f, %.2f, %.2f |%n",
                name,
                kind.median(Start::seconds),
                kind.median(Start::cpu),
                kind.median(Start::resident),
                kind.median(Start::seconds) / empty.median(Start::seconds),
                kind.median(Start::cpu) / empty.median(Start::cpu),
                kind.median(Start::resident) / empty.median(Start::resident)));
    }
}
