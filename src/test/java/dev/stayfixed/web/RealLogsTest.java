package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import dev.stayfixed.platform.OnH2;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.boot.test.web.server.LocalServerPort;
import tools.jackson.databind.JsonNode;

/**
 * Recorded drives of real cars, sent to the running service; the facts of the answers against values that another program computed
 * from the same definitions. Sources: M. Weber, Automotive OBD-II Dataset, Karlsruhe Institute of Technology, DOI 10.35097/1130 (CC BY
 * 4.0); nds_data of the DrivePlotR package (MIT). The data are not part of this project: the folder is named by the system property
 * stayfixed.data.
 */
@OnH2
class RealLogsTest {

    private static final Path DATA = Path.of(System.getProperty("stayfixed.data", "../shared/data"));

    @LocalServerPort
    int port;

    @ParameterizedTest
    @CsvSource({"kit, '', 7", "nds, drives, 11"})
    void theFactsOfTheAnswerAreThoseOfTheOtherProgram(String set, String folder, int count) throws IOException {
        assumeTrue(
                Files.isDirectory(DATA.resolve(set)),
                "no recorded drives at " + DATA.resolve(set) + "; set the system property stayfixed.data");
        Client client = new Client(port);
        Answer vehicle = new Shop(client).vehicle("car of the recorded drives " + set);
        List<NamedCsvRecord> expected;
        try (CsvReader<NamedCsvRecord> csv =
                CsvReader.builder().ofNamedCsvRecord(DATA.resolve(set).resolve("expected.csv"))) {
            expected = csv.stream().toList();
        }
        assertThat(expected).hasSize(count);
        for (NamedCsvRecord drive : expected) {
            check(client, vehicle, DATA.resolve(set).resolve(folder).resolve(drive.getField("file")), drive);
        }
    }

    private static void check(Client client, Answer vehicle, Path file, NamedCsvRecord expected) throws IOException {
        String name = expected.getField("file");
        String path = "/api/v1/vehicles/" + vehicle.id() + "/drives";
        String query = name.startsWith("20") ? "?zone=Europe/Berlin&date=" + name.substring(0, 10) : "";
        byte[] log = Files.readAllBytes(file);
        Answer answer = client.send("POST", path + query, RecordedDrive.CSV, log);
        if (answer.status() == 422) {
            confirm(client, answer.isProblem(422, "log-mapping-needed"));
            answer = client.send("POST", path + query, RecordedDrive.CSV, log);
        }
        JsonNode facts = answer.is(201).json().at("/log/facts");
        assertThat(answer.json().at("/log/judged").asBoolean()).as(name).isTrue();
        assertThat(answer.json().at("/log/rows").asString()).as(name).isEqualTo(expected.getField("rows"));
        same(expected, "wall_s", facts.at("/rows/wall").asLong() / 1000.0);
        same(expected, "counted_s", facts.at("/rows/counted").asLong() / 1000.0);
        same(expected, "gap_s", facts.at("/rows/gapTime").asLong() / 1000.0);
        same(expected, "engine_run_s", facts.at("/times/running").asLong() / 1000.0);
        same(expected, "fast_s", facts.at("/times/fast").asLong() / 1000.0);
        same(expected, "longest_idle_s", facts.at("/times/longestIdle").asLong() / 1000.0);
        same(
                expected,
                "longest_standstill_s",
                facts.at("/times/longestStandstill").asLong() / 1000.0);
        same(expected, "distance_km", facts.at("/distance").asDouble());
        same(expected, "distance_trapezoid_km", facts.at("/trapezoidDistance").asDouble());
        same(
                expected,
                "max_speed_kmh",
                facts.at("/extents/VEHICLE_SPEED/highest").asDouble());
        if (expected.findField("coolant_max").isPresent()) {
            same(expected, "coolant_start", facts.at("/extents/COOLANT/first").asDouble());
            same(expected, "coolant_max", facts.at("/extents/COOLANT/highest").asDouble());
            same(expected, "ambient_min", facts.at("/extents/AMBIENT/lowest").asDouble());
            assertThat(Boolean.toString(facts.at("/warmUps").has("SPARK_EXACT")))
                    .as(name)
                    .isEqualTo(expected.getField("warm_up_cycle"));
        }
        assertThat(Boolean.toString(facts.has("minimumCycleAt"))).as(name).isEqualTo(expected.getField("all3"));
    }

    private static void confirm(Client client, Answer needed) {
        JsonNode proposal = needed.json().at("/proposal");
        client.post(
                        "/api/v1/log-mappings",
                        "{\"name\":\"confirmed\",\"headers\":%s,\"mapping\":%s}"
                                .formatted(proposal.at("/headers"), proposal.at("/mapping")))
                .is(201);
    }

    /** To the digits that the other program printed. */
    private static void same(NamedCsvRecord expected, String field, double found) {
        BigDecimal printed = new BigDecimal(expected.getField(field));
        assertThat(BigDecimal.valueOf(found).setScale(printed.scale(), RoundingMode.HALF_EVEN))
                .as(expected.getField("file") + " " + field)
                .isEqualByComparingTo(printed);
    }
}
