package dev.stayfixed.telling;

import static org.assertj.core.api.Assertions.assertThat;

import biweekly.Biweekly;
import biweekly.ICalendar;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Shop;
import jakarta.mail.internet.MimeMessage;
import java.io.Reader;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Properties;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;

/** Who is told of what: by mail, in the inbox, in the calendar; and what the shop learns. */
abstract class TellingStories extends Told {

    private final String tag = UUID.randomUUID().toString().substring(0, 8);
    private final String technician = "tech." + tag + "@shop.example";
    private final String driver = "driver." + tag + "@home.example";

    @Test
    void technicianAndDriverAreToldInTheirOwnWords() throws Exception {
        Answer vehicle = shop.vehicle("2011 estate");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        confirm(vehicle);
        bell.ring();
        bell.ring();
        MimeMessage shops = only(post.to(technician));
        assertThat(shops.getSubject()).isEqualTo("P0420 on 2011 estate: confirmed fixed");
        assertThat(shops.getHeader("List-Unsubscribe")).isNull();
        assertThat(text(shops))
                .startsWith("Close the job when you like: this repair is proven.")
                .contains("Before: 1 of 2 clean trips. Now: confirmed fixed.", "Monitor: catalyst")
                .endsWith("/jobs/" + job.id());
        assertThat(text(shops)).doesNotContain("/api/");
        MimeMessage drivers = only(post.to(driver));
        assertThat(drivers.getSubject()).isEqualTo("Your 2011 estate: the repair is confirmed");
        assertThat(text(drivers)).startsWith("You need not do anything.").doesNotContain("P0420");
        assertThat(drivers.getHeader("List-Unsubscribe-Post")).containsExactly("List-Unsubscribe=One-Click");
        assertThat(drivers.getHeader("Auto-Submitted")).containsExactly("auto-generated");
    }

    @Test
    void aDriverIsWrittenToInTheLanguageOfTheJob() throws Exception {
        Answer vehicle = shop.vehicle("2014 estate");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        client.put(
                        "/api/v1/jobs/" + job.id() + "/notifications",
                        "{\"technicianEmail\":\"%s\",\"driverEmail\":\"%s\",\"driverLanguage\":\"es\"}"
                                .formatted(technician, driver),
                        "If-Match",
                        "*")
                .is(200);
        confirm(vehicle);
        bell.ring();
        bell.ring();
        Properties spanish = new Properties();
        try (Reader in = Files.newBufferedReader(Path.of("src", "main", "resources", "languages", "es.properties"))) {
            spanish.load(in);
        }
        assertThat(text(only(post.to(driver)))).startsWith(spanish.getProperty("telling.driver.next.CONFIRMED_FIXED"));
        assertThat(text(only(post.to(technician)))).startsWith("Close the job when you like");
    }

    @Test
    void aProofThatFallsIsNoCaseForReopeningAnOpenJob() throws Exception {
        Answer vehicle = shop.vehicle("2015 estate");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        confirm(vehicle);
        shop.drive(vehicle, "2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        bell.ring();
        bell.ring();
        assertThat(post.to(technician)).hasSize(2);
        assertThat(text(post.to(technician).get(1)))
                .startsWith("The proof no longer stands. After one failed trip the next one decides")
                .contains("Now: failed after proof");
    }

    @Test
    void aDriverStopsTheMailsByOnePost() throws Exception {
        Answer vehicle = shop.vehicle("2012 estate");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        confirm(vehicle);
        bell.ring();
        String header = only(post.to(driver)).getHeader("List-Unsubscribe")[0];
        String path = URI.create(header.substring(1, header.length() - 1)).getPath();
        assertThat(text(only(post.to(driver)))).contains(path);

        Answer page = client.get(path).is(200);
        assertThat(page.body()).contains("Stop the mails");
        assertThat(page.header("Content-Security-Policy")).contains("form-action 'self'");
        assertThat(settings(job).json().at("/driverStopped").asBoolean()).isFalse();
        byte[] form = "List-Unsubscribe=One-Click".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        client.send("POST", path, "application/x-www-form-urlencoded", form).is(200);
        assertThat(settings(job).json().at("/driverStopped").asBoolean()).isTrue();

        shop.drive(vehicle, "2026-06-05T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        bell.ring();
        assertThat(post.to(driver)).hasSize(1);
        assertThat(post.to(technician)).hasSize(2);
        client.post(path + "/again", "").is(200);
        shop.drive(vehicle, "2026-06-06T08:00:00Z", Shop.RAN_AND_CONFIRMED).is(201);
        bell.ring();
        assertThat(post.to(driver)).hasSize(2);
        client.get("/mail-stop/guessed").isProblem(404, "not-found");
    }

    @Test
    void aLateDriveThatChangesWhatWasToldIsToldItself() {
        Answer vehicle = shop.vehicle("2013 estate");
        Answer job = repaired(vehicle);
        confirm(vehicle);
        shop.drive(vehicle, "2026-06-03T18:00:00Z", Shop.RAN_AND_FAILED).is(201);
        assertThat(inboxOf(job)).containsExactly("CONFIRMED_FIXED", "VERDICT_REVISED");
    }

    @Test
    void aDriveLeftOutThatChangesWhatWasToldIsToldItself() {
        Answer vehicle = shop.vehicle("2013 coupe");
        Answer job = repaired(vehicle);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer strange =
                shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        client.put(API + "/drives/" + strange.id() + "/left-out", "{\"reason\":\"another car\"}")
                .is(200);
        assertThat(inboxOf(job)).containsExactly("FAILED_ONCE", "VERDICT_REVISED");
        assertThat(client.get(API + "/inbox").at("/items/0/summary"))
                .endsWith(
                        "Before: failed once. Now: 1 of 2 clean trips. Why: a drive was left out of the count (another"
                                + " car).");
    }

    @Test
    @DisplayName("in a shop that uses US units: in the inbox, in a mail, on the page and in the report")
    void aPersonsOwnWordsAreNotConverted() throws Exception {
        ShopSettings before = shops.settings();
        shops.change(new ShopSettings(before.name(), before.zone(), ShopSettings.Units.US, before.stallDays()));
        try {
            Answer vehicle = shop.vehicle("2013 coupe, US");
            Answer job = shop.job(vehicle);
            client.post(
                            API + "/jobs/" + job.id() + "/repairs",
                            "{\"performedAt\":\"2026-06-01T10:00:00Z\",\"description\":\"10 K resistor replaced\","
                                    + "\"codesCleared\":true,\"measurements\":[{\"check\":\"OTHER\","
                                    + "\"quantity\":\"drop over the 10 K resistor\",\"unit\":\"V\",\"expectedMax\":0.2,"
                                    + "\"after\":0.9}]}")
                    .is(201);
            tellByMail(job, technician, driver);
            Answer strange = shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_AND_FAILED)
                    .is(201);
            client.put(API + "/drives/" + strange.id() + "/left-out", "{\"reason\":\"the 10 K resistor was still in\"}")
                    .is(200);
            assertThat(client.get(API + "/inbox").at("/items/0/summary"))
                    .endsWith("Why: a drive was left out of the count (the 10 K resistor was still in).");
            bell.ring();
            assertThat(text(post.to(technician).get(1))).contains("the 10 K resistor was still in");
            String measured = "After the repair drop over the 10 K resistor reads 0.9 V, expected at most 0.2 V.";
            assertThat(client.get("/jobs/" + job.id()).is(200).body())
                    .contains("10 K resistor replaced", measured)
                    .doesNotContain("°F resistor");
            Answer report =
                    client.post(API + "/jobs/" + job.id() + "/report", "").is(201);
            assertThat(report.body())
                    .contains("10 K resistor replaced", "the 10 K resistor was still in", measured)
                    .doesNotContain("°F resistor");
        } finally {
            shops.change(before);
        }
    }

    /** The driver sees the lamp himself; the shop has to hear of it. */
    @Test
    void aLampThatTheDriverReportsIsMailedToTheShopAtOnce() throws Exception {
        Answer vehicle = shop.vehicle("2013 roadster");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        String lamp = "{\"start\":\"2026-06-03T08:00:00Z\",\"summary\":{\"runTime\":1200,\"milOn\":true}}";
        client.post(API + "/vehicles/" + vehicle.id() + "/drives", lamp).is(201);
        client.post(API + "/vehicles/" + vehicle.id() + "/drives", lamp).is(200);
        bell.ring();
        MimeMessage shops = only(post.to(technician));
        assertThat(shops.getSubject()).isEqualTo("2013 roadster: lamp reported on");
        assertThat(text(shops)).contains("the malfunction lamp (MIL) was on in this drive");
        assertThat(post.to(driver)).isEmpty();
        assertThat(inboxOf(job)).containsExactly("LAMP_ON");
    }

    @Test
    void codesClearedInBetweenAreTold() {
        Answer vehicle = shop.vehicle("2014 estate");
        Answer job = repaired(vehicle);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        client.post(
                        API + "/vehicles/" + vehicle.id() + "/drives",
                        "{\"start\":\"2026-06-04T08:00:00Z\",\"codesClearedBefore\":true,\"scans\":[{\"text\":\"%s\"}]}"
                                .formatted(Shop.DID_NOT_RUN))
                .is(201);
        assertThat(inboxOf(job)).containsExactly("CODES_CLEARED");
    }

    /** The lamp is commanded on, and no code is stored (SAE J1979, PID $01, byte A). */
    @Test
    void contradictoryDataIsTold() {
        Answer vehicle = shop.vehicle("2014 saloon");
        Answer job = repaired(vehicle);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", "41 01 80 07 65 00\\n47 00\\n43 00")
                .is(201);
        assertThat(inboxOf(job)).containsExactlyInAnyOrder("CONTRADICTORY_DATA", "LAMP_ON");
    }

    @Test
    void aJobThatWasClosedAllTheSameCanComeBack() {
        Answer vehicle = shop.vehicle("2014 coupe");
        Answer job = repaired(vehicle);
        shop.close(job, "{\"reason\":\"the customer is in a hurry\"}").is(200);
        clock.forward(Duration.ofDays(3));
        String first = clock.instant().minus(Duration.ofDays(2)).toString();
        String second = clock.instant().minus(Duration.ofDays(1)).toString();
        shop.drive(vehicle, first, Shop.RAN_AND_FAILED).is(201);
        assertThat(inboxOf(job)).containsExactly("CAME_BACK");
        assertThat(shop.see(job).json().at("/comeback").asBoolean()).isFalse();
        shop.drive(vehicle, second, Shop.RAN_AND_CONFIRMED).is(201);
        assertThat(inboxOf(job)).containsExactly("CAME_BACK", "RECURRED");
        assertThat(shop.see(job).json().at("/comeback").asBoolean()).isTrue();
    }

    @Test
    void silenceIsTold_andEndsWithTheJob() {
        Answer vehicle = shop.vehicle("2015 estate");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        clock.forward(Duration.ofDays(6));
        bell.ring();
        assertThat(inboxOf(job)).isEmpty();
        clock.forward(Duration.ofDays(1).plusHours(1));
        bell.ring();
        clock.forward(Duration.ofHours(2));
        bell.ring();
        assertThat(inboxOf(job)).containsExactly("NOTHING_HEARD");
        assertThat(post.to(driver)).hasSize(1);
        shop.close(job, "{\"reason\":\"the car was sold\"}").is(200);
        clock.forward(Duration.ofDays(8));
        bell.ring();
        assertThat(inboxOf(job)).containsExactly("NOTHING_HEARD");
        client.post(API + "/jobs/" + job.id() + "/reopen", "{\"reason\":\"not sold\"}", "If-Match", "*")
                .is(200);
        bell.ring();
        clock.forward(Duration.ofHours(2));
        bell.ring();
        assertThat(inboxOf(job)).containsExactly("NOTHING_HEARD", "NOTHING_HEARD");
    }

    @Test
    void aMailServerThatIsDownDelaysAndLosesNothing() throws Exception {
        Answer vehicle = shop.vehicle("2016 estate");
        Answer job = repaired(vehicle);
        tellByMail(job, technician, driver);
        post.stop();
        confirm(vehicle);
        bell.ring();
        bell.ringNext();
        post.start();
        while (bell.ringNext()) {
            assertThat(post.afterRestart(driver)).hasSizeLessThan(2);
        }
        assertThat(post.afterRestart(driver)).hasSize(1);
        assertThat(post.afterRestart(technician)).hasSize(1);
    }

    @Test
    void comebacksAreFoundAndTheShopLearns() {
        Answer vehicle = shop.vehicle("2017 estate");
        Answer job = repaired(vehicle);
        confirm(vehicle);
        shop.close(job, "{}").is(200);
        Answer related = shop.job(vehicle, "{\"code\":\"P0430\"}");
        Answer back = client.get(API + "/jobs/" + related.id() + "/comebacks").is(200);
        assertThat(back.json().at("/comeback").asBoolean()).isTrue();
        assertThat(back.at("/items/0/earlierJobId")).isEqualTo(job.id());
        assertThat(back.json().at("/items/0/sameCode").asBoolean()).isFalse();
        assertThat(inboxOf(related)).containsExactly("CAME_BACK");
        assertThat(related.json().at("/comeback").asBoolean()).isTrue();
        assertThat(shop.see(job).json().at("/comeback").asBoolean()).isFalse();
        Answer other = shop.job(vehicle, "{\"code\":\"P0141\"}");
        assertThat(client.get(API + "/jobs/" + other.id() + "/comebacks").json().at("/items"))
                .isEmpty();
        shop.drive(vehicle, "2026-06-20T08:00:00Z", Shop.RAN_AND_FAILED).is(201);
        assertThat(inboxOf(job)).contains("CAME_BACK");

        Answer lessons = client.get(API + "/learning").is(200);
        assertThat(lessons.json().at("/faults").asInt()).isPositive();
        assertThat(lessons.json().at("/firstTimeFix/upper").asDouble()).isLessThanOrEqualTo(1);
        assertThat(lessons.at("/byCode/0/name")).isEqualTo("P0420");
        for (String by : List.of("DAYS", "DISTANCE")) {
            assertThat(client.get(API + "/learning/holding?by=" + by)
                            .is(200)
                            .json()
                            .at("/few")
                            .asBoolean())
                    .isTrue();
            assertThat(client.get(API + "/learning/holding.svg?by=" + by)
                            .is(200)
                            .body())
                    .startsWith("<svg")
                    .contains("too few to conclude anything");
            client.get(API + "/learning/holding.csv?by=" + by).is(200);
        }
        client.get(API + "/learning/holding?by=LUCK").isProblem(400, "invalid-parameter");
        assertThat(client.get(API + "/learning.csv").is(200).body()).contains("\"code\",\"P0420\",");
    }

    @Test
    void followUpsStandInTheCalendarUntilTheyAreKept() {
        Answer vehicle =
                shop.vehicle("2018 estate, grün; the one with the \\\\ sticker and a very long description indeed");
        Answer job = repaired(vehicle);
        String path = API + "/jobs/" + job.id() + "/follow-ups";
        Answer made = client.post(path, "{\"dueAt\":\"2026-07-03T09:00:00+02:00\",\"note\":\"call,\\nthen write\"}")
                .is(201);
        String url = client.post(API + "/calendar-link", "").is(200).at("/url");
        assertThat(url).startsWith("https://shop.example/calendar/");
        String feed = URI.create(url).getPath();
        Answer calendar = client.get(feed).is(200);
        assertThat(calendar.header("Content-Type")).startsWith("text/calendar");
        assertThat(calendar.body().lines())
                .allMatch(l -> l.getBytes(java.nio.charset.StandardCharsets.UTF_8).length <= 75);
        ICalendar read = Biweekly.parse(calendar.body()).first();
        assertThat(read.validate(biweekly.ICalVersion.V2_0).isEmpty()).isTrue();
        var event = read.getEvents().stream()
                .filter(e -> e.getUid().getValue().startsWith(made.id()))
                .findFirst()
                .orElseThrow();
        assertThat(event.getSummary().getValue())
                .isEqualTo(
                        "Follow up: 2018 estate, grün; the one with the \\ sticker and a very long description indeed");
        assertThat(event.getDescription().getValue()).isEqualTo("call,\nthen write");
        assertThat(event.getDateStart().getValue().toInstant()).isEqualTo("2026-07-03T07:00:00Z");

        client.put(path + "/" + made.id(), "{\"dueAt\":\"2026-07-04T09:00:00Z\",\"note\":\"x\"}")
                .isProblem(428, "precondition-required");
        client.post(path, "{\"dueAt\":\"tomorrow\",\"note\":\"x\"}").isProblem(422, "invalid-content");
        client.post(path + "/" + made.id() + "/done", "").is(200);
        assertThat(client.get(feed).body()).doesNotContain(made.id());
        client.post(API + "/calendar-link", "").is(200);
        client.get(feed).isProblem(404, "not-found");
    }

    @Test
    void settingsRefuseWhatCannotBe() {
        Answer present = client.get(API + "/notification-settings").is(200);
        String path = API + "/notification-settings";
        for (String address :
                List.of("a b@example.org", "x@example.org, y@example.org", "x@example.org\\nBcc: y@example.org", "x")) {
            client.put(
                            path,
                            present.body().replaceFirst("\\{", "{\"technicianEmail\":\"" + address + "\","),
                            "If-Match",
                            "*")
                    .isProblem(422, "invalid-content");
        }
        client.put(path, present.body()).isProblem(428, "precondition-required");
        client.put(path, present.body(), "If-Match", "\"99\"").isProblem(412, "version-changed");
        client.put(path, present.body().replace("\"silentDays\":7", "\"silentDays\":0"), "If-Match", "*")
                .isProblem(422, "invalid-content");
        Answer changed =
                client.put(path, present.body(), "If-Match", present.etag()).is(200);
        assertThat(changed.body()).isEqualTo(present.body());
        assertThat(changed.etag()).isNotEqualTo(present.etag());
        client.get(API + "/jobs/" + UUID.randomUUID() + "/notifications").isProblem(404, "not-found");
        client.post(API + "/inbox/" + UUID.randomUUID() + "/read", "").isProblem(404, "not-found");
    }

    @Test
    void theInboxIsRead() {
        Answer vehicle = shop.vehicle("2019 estate");
        Answer job = repaired(vehicle);
        confirm(vehicle);
        Answer first = client.get(API + "/inbox?unread=true&limit=1").is(200);
        assertThat(first.at("/items/0/jobId")).isEqualTo(job.id());
        long unread = first.json().at("/unread").asLong();
        client.post(API + "/inbox/" + first.at("/items/0/id") + "/read", "").is(200);
        assertThat(client.get(API + "/inbox").json().at("/unread").asLong()).isEqualTo(unread - 1);
        client.post(API + "/inbox/read", "").is(200);
        assertThat(client.get(API + "/inbox").json().at("/unread").asLong()).isZero();
    }

    private Answer settings(Answer job) {
        return client.get(API + "/jobs/" + job.id() + "/notifications").is(200);
    }

    private static MimeMessage only(List<MimeMessage> messages) {
        assertThat(messages).hasSize(1);
        return messages.get(0);
    }

    private static String text(MimeMessage message) throws Exception {
        return message.getContent().toString();
    }
}
