package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.worklist.Attention;
import dev.stayfixed.worklist.OpenJob;
import dev.stayfixed.worklist.OpenJobs;
import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.core.io.ClassPathResource;

/** The list of open jobs and the settings of the shop. */
abstract class OpenJobList extends OverHttp {

    private static final String PLACES =
            "(select a.d + 10 * b.d + 1 n from (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) a(d)"
                    + " cross join (values (0), (1), (2), (3), (4), (5), (6), (7), (8), (9)) b(d))";

    /** $01 PID $01 says that the MIL is commanded on and that no code is stored. */
    private static final String CONTRADICTORY = "41 01 80 07 65 00\\n" + Shop.RAN_CLEAN;

    @Autowired
    OpenJobs openJobs;

    @Autowired
    Shops shops;

    @Test
    void eachJobSaysWhatItNeeds() {
        Answer recurred = jobWithDrives("Listed back", "2026-06-26", Shop.RAN_AND_FAILED, Shop.RAN_AND_CONFIRMED);
        Answer fixed = jobWithDrives("Listed fixed", "2026-06-26", Shop.RAN_CLEAN, Shop.RAN_CLEAN);
        Answer silent = jobWithDrives("Listed silent", "2026-06-10", Shop.RAN_CLEAN);
        Answer contradictory = jobWithDrives("Listed odd", "2026-06-26", CONTRADICTORY);
        Answer failed = jobWithDrives("Listed failed", "2026-06-26", Shop.RAN_AND_FAILED);
        Answer waiting = jobWithDrives("Listed waiting", "2026-06-26");
        List<OpenJob> found = openJobs.find("listed ", Optional.empty(), 1, 50).jobs();
        assertThat(found)
                .extracting(OpenJob::id)
                .containsExactly(id(recurred), id(fixed), id(silent), id(contradictory), id(failed), id(waiting));
        assertThat(found)
                .extracting(OpenJob::attention)
                .containsExactly(
                        Attention.CAME_BACK,
                        Attention.READY_TO_CLOSE,
                        Attention.STALLED,
                        Attention.CONTRADICTORY,
                        Attention.FAILED_ONCE,
                        Attention.WAITING);
        assertThat(found.get(1).lastDrive()).contains(Instant.parse("2026-06-28T08:00:00Z"));
        assertThat(found.get(5).lastDrive()).isEmpty();
        assertThat(found.get(2).faults().get(0).standing().words()).isEqualTo("1 of 2 clean trips");
    }

    @Test
    void aPartIsFoundByWhatItsVehicleIsCalledAndByItsCode() {
        Answer vehicle = shop.vehicle("Paged 100% electricless");
        shop.job(vehicle, "{\"code\":\"P0456\"}");
        shop.job(vehicle, "{\"code\":\"P0457\"}");
        assertThat(openJobs.find("0% ELEC", Optional.empty(), 1, 50).total()).isEqualTo(2);
        assertThat(openJobs.find("p0457", Optional.empty(), 1, 50).total()).isEqualTo(1);
        assertThat(openJobs.find("10_%", Optional.empty(), 1, 50).total()).isZero();
        OpenJobs.Part last = openJobs.find("paged", Optional.empty(), 99, 1);
        assertThat(last.page()).isEqualTo(2);
        assertThat(last.jobs()).hasSize(1);
        assertThat(openJobs.find("paged", Optional.of(Attention.STALLED), 1, 50).total())
                .isZero();
        assertThat(last.counts()).containsEntry(Attention.REPAIR_DUE, 2);
    }

    @Test
    void theSettingsOfTheShopAreKept() {
        ShopSettings before = shops.settings();
        ShopSettings wanted = new ShopSettings("Quellgasse 3", ZoneId.of("Europe/Berlin"), ShopSettings.Units.US, 12);
        shops.change(wanted);
        assertThat(shops.settings()).isEqualTo(wanted);
        shops.change(before);
    }

    @Test
    void theCustomerIsKeptAndFound() {
        Answer vehicle = shop.vehicle("Anybody's car");
        Answer job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"customer\":\"Wilma Ostrowa\",\"faults\":[{\"code\":\"P0420\"}]}"
                                .formatted(vehicle.id()))
                .is(201);
        assertThat(job.at("/customer")).isEqualTo("Wilma Ostrowa");
        assertThat(openJobs.find("ostrow", Optional.empty(), 1, 50).jobs())
                .extracting(OpenJob::id)
                .containsExactly(id(job));
    }

    @Test
    void aPlaceThatIsKeptIsTheOneThatTheMigrationFinds() throws IOException {
        Answer moved = jobWithDrives("Moved", "2026-06-26", Shop.RAN_CLEAN, Shop.RAN_AND_FAILED);
        Answer vehicle = shop.vehicle("Moved too");
        Answer first = shop.job(vehicle);
        shop.repair(first, "2026-06-20T09:00:00Z");
        Answer drive = shop.drive(vehicle, "2026-06-21T08:00:00Z", Shop.RAN_AND_FAILED);
        client.put("/api/v1/drives/" + drive.id() + "/left-out", "{\"reason\":\"another car\"}")
                .is(200);
        client.post("/api/v1/jobs/" + first.id() + "/faults", "{\"code\":\"P0171\"}")
                .is(201);
        shop.job(vehicle);
        shop.close(moved, "{\"reason\":\"sold\"}").is(200);
        assertThat(kept("select job_id, need, can_stall, news_at from open_job", moved))
                .isEmpty();
        client.post(
                        "/api/v1/jobs/" + moved.id() + "/reopen",
                        "{\"reason\":\"back again\"}",
                        "If-Match",
                        shop.see(moved).etag())
                .is(200);
        assertThat(kept("select job_id, need, can_stall, news_at from open_job"))
                .containsExactlyInAnyOrderElementsOf(kept(selectOf("V12__open_jobs.sql")));
    }

    private List<Map<String, Object>> kept(String select, Answer... jobs) {
        return jdbc.sql("select k.job_id, k.need, k.can_stall, k.news_at from (" + select + ") k"
                        + (jobs.length == 0 ? "" : " where k.job_id = '" + jobs[0].id() + "'"))
                .query()
                .listOfRows();
    }

    /** What a migration fills its table with, under the names of the columns. */
    private static String selectOf(String migration) throws IOException {
        String sql = new ClassPathResource("db-migrations/" + migration).getContentAsString(StandardCharsets.UTF_8);
        return sql.substring(sql.indexOf("select n.job_id"), sql.indexOf(";\n\ncreate index"));
    }

    @Test
    void aPartThatIsKeptIsOneThatTheMigrationFinds() throws IOException {
        Answer vehicle = client.post(
                        "/api/v1/vehicles",
                        "{\"description\":\"Renamed ÄRGER coach\",\"plate\":\"QZ 4711\",\"vin\":\"WVWZZZ1KZ7W999042\"}")
                .is(201);
        Answer job = client.post("/api/v1/jobs", """
                        {"vehicleId":"%s","customer":"Olga Part","reference":"R-77","complaint":"Lamp on,\\nsince Tuesday",
                         "faults":[{"code":"P0420"}]}""".formatted(vehicle.id())).is(201);
        client.post("/api/v1/jobs/" + job.id() + "/faults", "{\"code\":\"P0171\"}")
                .is(201);
        client.put(
                        "/api/v1/vehicles/" + vehicle.id(),
                        "{\"description\":\"Gärtner’s coach\",\"plate\":\"QZ 4712\",\"vin\":\"WVWZZZ1KZ7W999042\"}",
                        "If-Match",
                        vehicle.etag())
                .is(200);
        client.put(
                        "/api/v1/jobs/" + job.id(),
                        "{\"customer\":\"Olga Parts\",\"reference\":\"R-78\",\"complaint\":\"Lamp on, since Friday\"}",
                        "If-Match",
                        shop.see(job).etag())
                .is(200);
        assertPartsOf(job);
        assertThat(found("z 4712", "999042", "ärtner’s co", "0171", "OLGA PARTS", "r-78", "since fri"))
                .allMatch(ids -> ids.contains(id(job)));
        assertThat(found("4711", "ärger", "tuesday", "ince fri", "4712\u0000", "\uDBFF\uDFFF"))
                .noneMatch(ids -> ids.contains(id(job)));
        shop.close(job, "{\"reason\":\"sold\"}").is(200);
        assertThat(openJobs.find("qz 4712", Optional.empty(), 1, 50).jobs()).isEmpty();
        assertThat(client.get("/api/v1/jobs?state=CLOSED&q=qz+4712").is(200).at("/items/0/id"))
                .isEqualTo(job.id());
        assertThat(client.get("/api/v1/jobs?state=OPEN&q=qz+4712")
                        .is(200)
                        .json()
                        .at("/items"))
                .isEmpty();
        assertPartsOf(job);
    }

    private List<List<UUID>> found(String... texts) {
        return Stream.of(texts)
                .map(text -> openJobs.find(text, Optional.empty(), 1, 50).jobs().stream()
                        .map(OpenJob::id)
                        .toList())
                .toList();
    }

    private void assertPartsOf(Answer job) throws IOException {
        String sql = new ClassPathResource("db-migrations/V14__search.sql").getContentAsString(StandardCharsets.UTF_8);
        String select = sql.substring(sql.indexOf("select distinct t.job_id"), sql.indexOf("\norder by 1, 2"));
        String kept = "select k.part, k.state from (%s) k where k.job_id = '" + job.id() + "'";
        assertThat(jdbc.sql(kept.formatted("select * from job_part")).query().listOfRows())
                .isNotEmpty()
                .containsExactlyInAnyOrderElementsOf(
                        jdbc.sql(kept.formatted(select.replace("join place p", "join " + PLACES + " p")))
                                .query()
                                .listOfRows());
    }

    @Test
    void aVehicleIsFoundByAnyPartOfItsNamesAsTheMigrationFindsIt() throws IOException {
        Answer vehicle = shop.vehicle("Übergroßer  Lieferwagen qv 77");
        assertThat(foundVehicles("ÜBERGROSSER", "wagen  qv", "  v 7", "übergroßer", "LIEFERWAGEN QV 77"))
                .containsExactly(0, 0, 1, 1, 1);
        assertThat(client.get("/api/v1/vehicles?q=lieferwagen+qv").is(200).at("/items/0/id"))
                .isEqualTo(vehicle.id());
        assertVehicleParts(vehicle);
        client.put(
                        "/api/v1/vehicles/" + vehicle.id(),
                        "{\"description\":\"Van\",\"plate\":\"QV-78 X\",\"ignition\":\"SPARK\"}",
                        "If-Match",
                        vehicle.etag())
                .is(200);
        assertThat(foundVehicles("lieferwagen qv", "qv-78", "8 x")).containsExactly(0, 1, 1);
        assertVehicleParts(vehicle);
    }

    private List<Integer> foundVehicles(String... texts) {
        return Stream.of(texts)
                .map(text -> client.get("/api/v1/vehicles?q=" + URLEncoder.encode(text, StandardCharsets.UTF_8))
                        .is(200)
                        .json()
                        .at("/items")
                        .size())
                .toList();
    }

    private void assertVehicleParts(Answer vehicle) throws IOException {
        String sql = new ClassPathResource("db-migrations/V22__vehicle_search.sql")
                .getContentAsString(StandardCharsets.UTF_8);
        String select = sql.substring(sql.indexOf("select distinct t.id"), sql.indexOf("\norder by 1, 2"));
        String kept = "select k.part from (%s) k where k.%s = '" + vehicle.id() + "'";
        assertThat(jdbc.sql(kept.formatted("select * from vehicle_part", "vehicle_id"))
                        .query(String.class)
                        .list())
                .isNotEmpty()
                .containsExactlyInAnyOrderElementsOf(
                        jdbc.sql(kept.formatted(select.replace("join place p", "join " + PLACES + " p"), "id"))
                                .query(String.class)
                                .list());
    }

    @Test
    void aLongListIsCountedUpToAThousandAndGoesOnToItsEnd() {
        Answer vehicle = shop.vehicle("One of very many");
        UUID shopId = jdbc.sql("select shop_id from vehicle where id = '" + vehicle.id() + "'")
                .query(UUID.class)
                .single();
        List<UUID> many = new ArrayList<>();
        try {
            for (int i = 0; i < OpenJobs.COUNTED + 60; i++) {
                UUID job = UUID.randomUUID();
                many.add(job);
                insertWaiting(
                        job,
                        shopId,
                        UUID.fromString(vehicle.id()),
                        Instant.parse("2026-06-29T00:00:00Z").plusSeconds(i));
            }
            OpenJobs.Part part = openJobs.find("", Optional.of(Attention.WAITING), 1, 200);
            assertThat(part.counts().get(Attention.WAITING)).isGreaterThan(OpenJobs.COUNTED);
            assertThat(part.more()).isTrue();
            List<UUID> seen = new ArrayList<>();
            for (int page = 1; page <= 20 && seen.size() < page * 200; page++) {
                part = openJobs.find("", Optional.of(Attention.WAITING), page, 200);
                part.jobs().forEach(job -> seen.add(job.id()));
                assertThat(part.more()).isEqualTo(part.page() < part.pages());
                if (!part.more()) {
                    break;
                }
            }
            assertThat(seen).doesNotHaveDuplicates().hasSize(part.total()).containsSubsequence(many);
            OpenJobs.Part beyond = openJobs.find("", Optional.of(Attention.WAITING), 999_999, 200);
            assertThat(beyond).isEqualTo(part);
            OpenJobs.Part all = openJobs.find("", Optional.empty(), 999_999, 200);
            assertThat(all.more()).isFalse();
            assertThat(all.jobs()).endsWith(part.jobs().get(part.jobs().size() - 1));
            findsTheSameByTheirText(many);
        } finally {
            many.forEach(job -> List.of(
                            "open_job where job_id", "job_part where job_id", "fault where job_id", "job where id")
                    .forEach(table ->
                            jdbc.sql("delete from " + table + " = ?").param(job).update()));
        }
    }

    private void findsTheSameByTheirText(List<UUID> many) {
        OpenJobs.Part part = openJobs.find("very many", Optional.empty(), 1, 1_000);
        assertThat(part.sample()).isTrue();
        assertThat(part.more()).isTrue();
        assertThat(part.counts().get(Attention.WAITING)).isBetween(900, OpenJobs.COUNTED);
        List<UUID> seen = new ArrayList<>(part.jobs().stream().map(OpenJob::id).toList());
        part = openJobs.find("very many", Optional.empty(), 2, 1_000);
        part.jobs().forEach(job -> seen.add(job.id()));
        assertThat(seen).isEqualTo(many);
        assertThat(part.more()).isFalse();
        assertThat(openJobs.find("very many", Optional.of(Attention.STALLED), 1, 50)
                        .jobs())
                .isEmpty();
        List<String> listed = new ArrayList<>();
        String cursor = "";
        do {
            Answer page =
                    client.get("/api/v1/jobs?limit=200&q=very+many" + cursor).is(200);
            page.json().at("/items").forEach(job -> listed.add(job.at("/id").asString()));
            cursor = page.json().at("/next").isMissingNode() ? "" : "&cursor=" + page.at("/next");
        } while (!cursor.isEmpty());
        assertThat(listed)
                .containsExactlyInAnyOrderElementsOf(
                        many.stream().map(UUID::toString).toList());
    }

    private void insertWaiting(UUID job, UUID shopId, UUID vehicleId, Instant at) {
        OffsetDateTime opened = at.atOffset(ZoneOffset.UTC);
        jdbc.sql("insert into job (id, shop_id, vehicle_id, opened_at, state, version) values (?, ?, ?, ?, 'OPEN', 1)")
                .params(job, shopId, vehicleId, opened)
                .update();
        jdbc.sql("""
                        insert into fault (id, shop_id, job_id, position, code, standing_state, monitor_group, trips, required_passes,
                                           weakest_evidence, standing_words, standing_decided, standing_comeback)
                        values (?, ?, ?, 0, 'P0420', 'PASSING', 'CATALYST', 'TWO', 2, 'ENABLING_CONDITIONS', 'passing', false, false)""").params(UUID.randomUUID(), shopId, job).update();
        jdbc.sql("insert into job_part (job_id, part, shop_id, state) values (?, 'very many', ?, 'OPEN')")
                .params(job, shopId)
                .update();
        jdbc.sql(
                        "insert into open_job (job_id, shop_id, vehicle_id, need, can_stall, news_at) values (?, ?, ?, 'WAITING', true, ?)")
                .params(job, shopId, vehicleId, opened)
                .update();
    }

    private Answer jobWithDrives(String vehicleName, String repairDay, String... scans) {
        Answer vehicle = shop.vehicle(vehicleName);
        Answer job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"openedAt\":\"2026-06-01T08:00:00Z\",\"faults\":[{\"code\":\"P0420\"}]}"
                                .formatted(vehicle.id()))
                .is(201);
        shop.repair(job, repairDay + "T09:00:00Z");
        for (int i = 0; i < scans.length; i++) {
            Instant start = Instant.parse(repairDay + "T08:00:00Z").plusSeconds(86_400L * (i + 1));
            shop.drive(vehicle, start.toString(), scans[i]).is(201);
        }
        return job;
    }

    private static UUID id(Answer answer) {
        return UUID.fromString(answer.id());
    }
}
