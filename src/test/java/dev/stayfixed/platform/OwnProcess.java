package dev.stayfixed.platform;

import dev.stayfixed.StayfixedApplication;
import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The service in a process of its own, on an H2 file and a port that it finds itself, so that a test can kill it. */
public final class OwnProcess implements AutoCloseable {

    private static final Pattern READY = Pattern.compile("Stayfixed is ready: open http://localhost:(\\d+)/");

    private static final String CLASSES =
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));

    private final Process process;
    private final int port;

    /** Starts the service, and goes on when it is ready. */
    public OwnProcess(String url, String... settings) throws IOException {
        this(CLASSES, url, settings);
    }

    /** The same, with a folder of resources before its own. */
    public static OwnProcess with(Path resources, String url, String... settings) throws IOException {
        return new OwnProcess(resources + File.pathSeparator + CLASSES, url, settings);
    }

    private OwnProcess(String classes, String url, String[] settings) throws IOException {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                classes,
                StayfixedApplication.class.getName(),
                "--server.port=0",
                "--spring.datasource.url=" + url));
        command.addAll(List.of(settings));
        process = new ProcessBuilder(command).redirectErrorStream(true).start();
        port = readUntilReady();
    }

    public static String url(Path folder) {
        return H2InFile.url(folder.resolve("stayfixed").toString());
    }

    /** What comes after it is read and dropped, so that the process never waits for its output to be read. */
    private int readUntilReady() throws IOException {
        StringBuilder output = new StringBuilder();
        BufferedReader reader = process.inputReader(StandardCharsets.UTF_8);
        for (String line = reader.readLine(); line != null; line = reader.readLine()) {
            output.append(line).append('\n');
            Matcher ready = READY.matcher(line);
            if (ready.find()) {
                Thread drain = new Thread(() -> reader.lines().forEach(rest -> {}), "drain");
                drain.setDaemon(true);
                drain.start();
                return Integer.parseInt(ready.group(1));
            }
        }
        throw new IllegalStateException("the service did not start:\n" + output);
    }

    public int port() {
        return port;
    }

    /** By SIGKILL; gives the exit value, 128 + 9. */
    public int kill() throws InterruptedException {
        return process.destroyForcibly().waitFor();
    }

    @Override
    public void close() {
        process.destroyForcibly().onExit().join();
    }
}
