package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.platform.AllRows;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.ShopByHeader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Two shops in one service: nothing of the one is seen, found or changed by the other, whatever ids it knows. */
abstract class ShopsApart extends OverHttp {

    private static final String API = "/api/v1";
    private static final Pattern ID =
            Pattern.compile("[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}|[0-9a-f]{64}");

    /** What says the same to everybody. */
    private static final Set<String> OF_NOBODY = Set.of("codes", "rule-sets", "scans", "backups", "conditions");

    private static final Set<String> NO_TABLES_OF_SHOPS =
            Set.of("scheduled_tasks", "flyway_schema_history", "idempotency_key");

    @Autowired
    JdbcConnectionDetails database;

    JdbcClient all;
    Things ours;

    /** Ids of what the first shop has, by what stands in front of them in an address. */
    record Things(Map<String, String> ids, String driverPage, String reportPage, String calendar) {}

    @BeforeEach
    void twoShops() {
        all = AllRows.of(database);
        if (all.sql("select id from shop where id = ?")
                .param(ShopByHeader.OTHER)
                .query(UUID.class)
                .list()
                .isEmpty()) {
            all.sql("""
                            insert into shop (id, name, created_at)
                            values (?, 'The other shop', timestamp with time zone '2026-01-02 00:00:00+00:00')""").param(ShopByHeader.OTHER).update();
        }
        ours = things();
    }

    /** One of everything. */
    private Things things() {
        Map<String, String> ids = new LinkedHashMap<>();
        Answer vehicle = shop.vehicle("ours alone");
        Answer endpoint = client.post(
                        API + "/webhooks",
                        "{\"url\":\"http://127.0.0.1:9/ours\",\"kinds\":[\"CONFIRMED_FIXED\",\"FAILED_ONCE\"]}")
                .is(201);
        Answer job = shop.job(vehicle);
        Answer repair = shop.repair(job, "2026-06-01T10:00:00Z");
        String photos = API + "/jobs/" + job.id() + "/repairs/" + repair.id() + "/photos";
        Answer photo = shop.photo(photos, Shop.picture(0x336699), "ours").is(201);
        Answer followUp = client.post(
                        API + "/jobs/" + job.id() + "/follow-ups",
                        "{\"dueAt\":\"2026-07-20T08:00:00Z\",\"note\":\"call them\"}")
                .is(201);
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer drive =
                shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer report = client.post(API + "/jobs/" + job.id() + "/report", "").is(201);
        ids.put("vehicles", vehicle.id());
        ids.put("jobs", job.id());
        ids.put("faults", shop.see(job).at("/faults/0/id"));
        ids.put("repairs", repair.id());
        ids.put("photos", photo.id());
        ids.put("follow-ups", followUp.id());
        ids.put("drives", drive.id());
        ids.put("webhooks", endpoint.id());
        ids.put(
                "deliveries",
                client.get(API + "/webhooks/" + endpoint.id() + "/deliveries")
                        .is(200)
                        .at("/items/0/id"));
        ids.put("inbox", client.get(API + "/inbox").is(200).at("/items/0/id"));
        ids.put("reports", report.at("/fingerprint"));
        return new Things(
                ids,
                path(client.post(API + "/jobs/" + job.id() + "/driver-link", "").is(201)),
                path(client.post(API + "/jobs/" + job.id() + "/report-link", "").is(201)),
                path(client.post(API + "/calendar-link", "").is(200)));
    }

    private static String path(Answer link) {
        return URI.create(link.at("/url")).getPath();
    }

    private Answer asOther(String method, String path, String type, String body, String... more) {
        List<String> headers = new ArrayList<>(List.of(ShopByHeader.HEADER, ShopByHeader.OTHER.toString()));
        headers.addAll(Arrays.asList(more));
        return client.send(method, path, type, body.getBytes(StandardCharsets.UTF_8), headers.toArray(String[]::new));
    }

    private Answer seenByOther(String path) {
        return asOther("GET", path, "", "");
    }

    @Test
    void whatIsReadByItsIdIsNotThereForTheOther() {
        List<String> read = new ArrayList<>();
        operations("get").forEach(path -> {
            Optional<String> address = withIds(path);
            address.filter(at -> client.get(at).status() == 200).ifPresent(at -> {
                read.add(path);
                Answer theirs = seenByOther(at);
                if (theirs.status() == 200) {
                    assertThat(theirs.body()).as("theirs, of " + path).matches("\\[]|\\{\"items\":\\[]}");
                } else {
                    assertThat(theirs.status()).as("theirs, of " + path).isEqualTo(404);
                }
            });
        });
        assertThat(read).as("what was tried").hasSizeGreaterThan(12);
    }

    @Test
    void noListHoldsWhatIsOfAnother() {
        Set<String> known = new TreeSet<>(ours.ids().values());
        operations("get").filter(path -> !path.contains("{")).forEach(path -> {
            Answer list = seenByOther(path);
            assertThat(list.status()).as(path).isLessThan(500);
            Matcher ids = ID.matcher(list.body());
            while (ids.find()) {
                assertThat(known).as(path).doesNotContain(ids.group());
            }
        });
        for (String page : List.of("/", "/closed", "/inbox", "/learning", "/settings/webhooks")) {
            Answer seen = asOther("GET", page, "", "", "Accept", "text/html").is(200);
            assertThat(seen.body()).as(page).doesNotContain("ours alone", "127.0.0.1:9/ours");
            known.forEach(id -> assertThat(seen.body()).as(page).doesNotContain(id));
        }
        assertThat(seenByOther(API + "/vehicles?q=ours").json().at("/items")).isEmpty();
        assertThat(seenByOther(API + "/jobs?q=P0420").json().at("/items")).isEmpty();
    }

    @Test
    void nothingOfAnotherIsChangedByItsId() {
        Map<String, List<String>> before = rows(CurrentShop.DEFAULT);
        for (String method : List.of("post", "put", "delete", "patch")) {
            operations(method)
                    .forEach(path -> withIds(path).ifPresent(address -> {
                        Answer answer =
                                asOther(method.toUpperCase(Locale.ROOT), address, Client.JSON, "{}", "If-Match", "*");
                        assertThat(answer.status()).as(method + " " + path).isBetween(400, 499);
                    }));
        }
        Map<String, String> bodies = new LinkedHashMap<>();
        bodies.put("POST /vehicles/{vehicles}/drives", Shop.body("2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED));
        bodies.put("PUT /drives/{drives}", Shop.body("2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED));
        bodies.put("PUT /drives/{drives}/left-out", "{\"reason\":\"another car\"}");
        bodies.put("PUT /vehicles/{vehicles}", "{\"description\":\"taken over\"}");
        bodies.put("POST /jobs", "{\"vehicleId\":\"{vehicles}\",\"faults\":[{\"code\":\"P0420\"}]}");
        bodies.put("POST /jobs/{jobs}/faults", "{\"code\":\"P0171\"}");
        bodies.put(
                "POST /jobs/{jobs}/repairs", "{\"performedAt\":\"2026-06-04T10:00:00Z\",\"description\":\"theirs\"}");
        bodies.put("POST /jobs/{jobs}/close", "{\"reason\":\"theirs\"}");
        bodies.put("POST /jobs/{jobs}/follow-ups", "{\"dueAt\":\"2026-07-21T08:00:00Z\",\"note\":\"theirs\"}");
        bodies.put(
                "PUT /jobs/{jobs}/follow-ups/{follow-ups}", "{\"dueAt\":\"2026-07-21T08:00:00Z\",\"note\":\"theirs\"}");
        bodies.put("PUT /jobs/{jobs}/notifications", "{\"technicianEmail\":\"they@other.example\"}");
        bodies.put(
                "PUT /webhooks/{webhooks}", "{\"url\":\"http://127.0.0.1:9/theirs\",\"kinds\":[\"CONFIRMED_FIXED\"]}");
        bodies.forEach((operation, body) -> {
            String[] parts = operation.split(" ", 2);
            Answer answer = asOther(parts[0], API + filled(parts[1]), Client.JSON, filled(body), "If-Match", "*");
            assertThat(answer.status()).as(operation + ": " + answer.body()).isIn(404, 422);
        });
        asOther("POST", API + "/inbox/read", "", "").is(200);
        asOther("DELETE", API + "/calendar-link", "", "").is(204);
        assertThat(rows(CurrentShop.DEFAULT)).isEqualTo(before);
    }

    @Test
    void aLinkLeadsToItsShopWhoeverIsSignedIn() {
        String html = "text/html";
        asOther("GET", ours.driverPage(), "", "", "Accept", html).is(200);
        assertThat(asOther("GET", ours.reportPage(), "", "", "Accept", html)
                        .is(200)
                        .body())
                .contains("ours alone");
        assertThat(seenByOther(ours.calendar()).is(200).body()).contains("call them");
        String unknown = "AAAAAAAAAAAAAAAAAAAAAAAA";
        for (String kind :
                List.of("/d/" + unknown, "/r/" + unknown, "/calendar/" + unknown + ".ics", "/mail-stop/" + unknown)) {
            assertThat(seenByOther(kind).status()).as(kind).isEqualTo(404);
            assertThat(client.get(kind).status()).as(kind).isEqualTo(404);
        }
        Answer logged = client.post(
                ours.driverPage() + "/drives",
                "{}",
                "Idempotency-Key",
                UUID.randomUUID().toString());
        assertThat(logged.status()).isLessThan(500);
        assertThat(client.post("/d/" + unknown + "/drives", "{}", "Idempotency-Key", "unknown link")
                        .status())
                .isEqualTo(404);
    }

    @Test
    void aKeyOfARequestIsTheShopsOwn() {
        String key = UUID.randomUUID().toString();
        Answer first = client.post(API + "/vehicles", "{\"description\":\"ours alone\"}", "Idempotency-Key", key)
                .is(201);
        Answer theirs = asOther(
                        "POST",
                        API + "/vehicles",
                        Client.JSON,
                        "{\"description\":\"theirs alone\"}",
                        "Idempotency-Key",
                        key)
                .is(201);
        assertThat(theirs.id()).isNotEqualTo(first.id());
        assertThat(client.get(API + "/vehicles/" + theirs.id()).status()).isEqualTo(404);
        assertThat(seenByOther(API + "/vehicles").body())
                .contains("theirs alone")
                .doesNotContain("ours alone");
    }

    /** Addresses of the interface, as they are described. */
    private Stream<String> operations(String method) {
        List<String> paths = new ArrayList<>();
        client.get("/api/openapi").is(200).json().at("/paths").properties().forEach(path -> {
            if (path.getValue().has(method)
                    && path.getKey().startsWith(API)
                    && OF_NOBODY.stream().noneMatch(word -> path.getKey().startsWith(API + "/" + word))) {
                paths.add(path.getKey());
            }
        });
        return paths.stream();
    }

    /** Empty, where there is nothing to be found by an id, or nothing of that kind here. */
    private Optional<String> withIds(String path) {
        List<String> parts = new ArrayList<>(List.of(path.split("/")));
        boolean any = false;
        for (int i = 1; i < parts.size(); i++) {
            if (parts.get(i).startsWith("{")) {
                String id = ours.ids().get(parts.get(i - 1));
                if (id == null) {
                    return Optional.empty();
                }
                any = true;
                parts.set(i, id + parts.get(i).substring(parts.get(i).lastIndexOf('}') + 1));
            }
        }
        return any ? Optional.of(String.join("/", parts)) : Optional.empty();
    }

    private String filled(String text) {
        String filled = text;
        for (Map.Entry<String, String> id : ours.ids().entrySet()) {
            filled = filled.replace("{" + id.getKey() + "}", id.getValue());
        }
        return filled;
    }

    Set<String> tables() {
        return new TreeSet<>(all.sql("""
                        select lower(table_name) from information_schema.tables
                        where table_schema = current_schema and table_type = 'BASE TABLE'""").query(String.class).list());
    }

    /** Everything that is written down of a shop, with the parts of all. */
    private Map<String, List<String>> rows(UUID shopId) {
        Map<String, List<String>> rows = new TreeMap<>();
        tables().stream().filter(table -> !NO_TABLES_OF_SHOPS.contains(table)).forEach(table -> {
            List<String> found = all.sql("select * from " + table).query().listOfRows().stream()
                    .filter(row -> row.getOrDefault("shop_id", shopId).equals(shopId))
                    .filter(row -> !table.equals("shop") || shopId.equals(row.get("id")))
                    .map(ShopsApart::text)
                    .sorted()
                    .toList();
            rows.put(table, found);
        });
        return rows;
    }

    private static String text(Map<String, Object> row) {
        Map<String, String> text = new TreeMap<>();
        row.forEach((column, value) ->
                text.put(column, value instanceof byte[] bytes ? Arrays.toString(bytes) : String.valueOf(value)));
        return text.toString();
    }
}
