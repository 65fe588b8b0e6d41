package dev.stayfixed.bench;

import dev.stayfixed.archive.WholeLog;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.springframework.util.FileSystemUtils;

/**
 * Recorded drives judged as the service judges them, one after another, beside an analytical database that reads the same files and
 * works out the same summary in one query, with all processors; DuckDB comes with the profile of the benchmarks only.
 */
final class SqlCosts {

    private static final int DRIVES = 200;
    private static final int ROWS = 36_000;

    /** What 13 CCR 1968.2 (c) and (d) ask of a drive: run time, time at speed, the longest idle, warm-up, distance. */
    private static final String SUMMARY = """
            with rows as (
              select filename, "Time (s)" as t, "01-0C" as rpm, "01-0D" as speed, "01-05" as coolant, "01-0F" as air,
                coalesce(lead("Time (s)") over drive - "Time (s)", 0) as lasts
              from read_csv(%s, filename = true, header = true)
              window drive as (partition by filename order by "Time (s)")),
            stretches as (
              select *, row_number() over (partition by filename order by t)
                - row_number() over (partition by filename, rpm > 0 and speed <= 1.6 order by t) as stretch
              from rows),
            idles as (
              select filename, max(held) as idle from (
                select filename, sum(lasts) as held from stretches
                where rpm > 0 and speed <= 1.6 group by filename, stretch) group by filename)
            select r.filename, sum(lasts) filter (where rpm > 0), sum(lasts) filter (where speed >= 40), any_value(idle),
              max(coolant), arg_min(coolant, t), max(coolant) - arg_min(coolant, t), arg_min(air, t), max(speed), max(rpm),
              sum(speed * lasts / 3600), min(t), max(t), count(*)
            from rows r left join idles i on i.filename = r.filename group by r.filename
            """;

    private SqlCosts() {}

    static void run() throws Exception {
        Path folder = Files.createTempDirectory("stayfixed-drives");
        try (Connection database = DriverManager.getConnection("jdbc:duckdb:")) {
            byte[] drive = LogCosts.log(ROWS, false);
            List<Path> files = new ArrayList<>();
            for (int i = 0; i < DRIVES; i++) {
                files.add(Files.write(folder.resolve("drive" + i + ".csv"), drive));
            }
            new Rounds("one drive of an hour at 10 Hz, from its file", 9)
                    .with("the database", 3, () -> summary(database, files.subList(0, 1)))
                    .with("judged", 3, () -> judged(files.get(0)))
                    .run();
            new Rounds(DRIVES + " such drives", 3)
                    .with("the database", 1, () -> summary(database, files))
                    .with(
                            "judged, one after another",
                            1,
                            () -> files.stream().mapToInt(SqlCosts::judged).sum())
                    .with(
                            "judged, as many at once as processors",
                            1,
                            () -> IntStream.range(0, DRIVES)
                                    .parallel()
                                    .map(i -> judged(files.get(i)))
                                    .sum())
                    .run();
        } finally {
            FileSystemUtils.deleteRecursively(folder);
        }
    }

    private static String summary(Connection database, List<Path> files) throws SQLException {
        String names = files.stream().map(file -> "'" + file + "'").toList().toString();
        StringBuilder found = new StringBuilder();
        try (Statement statement = database.createStatement();
                ResultSet rows = statement.executeQuery(SUMMARY.formatted(names))) {
            while (rows.next()) {
                found.append(rows.getDouble(2)).append(rows.getDouble(4));
            }
        }
        return found.toString();
    }

    private static int judged(Path file) {
        try {
            return WholeLog.of(Files.readAllBytes(file)).judged().hashCode();
        } catch (java.io.IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
