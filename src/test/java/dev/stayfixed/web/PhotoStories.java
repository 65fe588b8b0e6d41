package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Photos of a repair: taken in, shown in its report, taken away. */
abstract class PhotoStories extends OverHttp {

    private Answer job;
    private String photos;

    @BeforeEach
    void aRepairedJob() {
        job = shop.job(shop.vehicle("green estate"));
        Answer repair = shop.repair(job, "2026-06-01T10:00:00Z");
        photos = "/api/v1/jobs/" + job.id() + "/repairs/" + repair.id() + "/photos";
    }

    private Answer send(byte[] file, String caption) {
        return shop.photo(photos, file, caption);
    }

    @Test
    void aPhotoIsKeptOnceAndStandsInTheReport() {
        Answer photo = send(Shop.picture(0x336699), "6.1 Ω at the plug").is(201);
        assertThat(photo.at("/width")).isEqualTo("60");
        assertThat(send(Shop.picture(0x336699), "again").is(201).id()).isEqualTo(photo.id());
        assertThat(client.get("/api/v1/jobs/" + job.id() + "/photos").json().at("/items"))
                .hasSize(1);
        assertThat(client.get(photo.at("/href")).is(200).header("Content-Type")).isEqualTo("image/jpeg");
        Answer report = client.post("/api/v1/jobs/" + job.id() + "/report", "").is(201);
        assertThat(report.at("/facts/repairs/0/photos/0/caption")).isEqualTo("6.1 Ω at the plug");
        assertThat(report.at("/facts/repairs/0/photos/0/digest")).isEqualTo(photo.at("/digest"));
        String url = client.post("/api/v1/jobs/" + job.id() + "/report-link", "")
                .is(201)
                .at("/url");
        String shared = url.substring(url.indexOf("/r/"));
        assertThat(client.get(shared).is(200).body())
                .contains(shared + "/photos/" + photo.id() + ".jpg", "Photo: the repair", ": 6.1 Ω at the plug");
        assertThat(client.get(shared + "/photos/" + photo.id() + ".jpg").is(200).header("Content-Type"))
                .startsWith("image/jpeg");
        Answer other = shop.job(shop.vehicle("other estate"));
        String foreign = client.post("/api/v1/jobs/" + other.id() + "/report-link", "")
                .is(201)
                .at("/url");
        client.get(foreign.substring(foreign.indexOf("/r/")) + "/photos/" + photo.id() + ".jpg")
                .is(404);
    }

    @Test
    void whatIsNoPhotoIsRefusedAndAPhotoOfAClosedJobStays() {
        send("not a photo".getBytes(StandardCharsets.US_ASCII), "").isProblem(422, "invalid-content");
        Answer photo = send(Shop.picture(0x993333), "").is(201);
        send(Shop.picture(0x993333), "x".repeat(201)).isProblem(422, "invalid-content");
        Answer closed = shop.close(job, "{\"reason\":\"sold\"}").is(200);
        send(Shop.picture(0x339933), "late").isProblem(409, "job-closed");
        String one = "/api/v1/jobs/" + job.id() + "/photos/" + photo.id();
        client.send("DELETE", one, "", new byte[0]).isProblem(409, "job-closed");
        client.post("/api/v1/jobs/" + job.id() + "/reopen", "{\"reason\":\"back\"}", "If-Match", closed.etag())
                .is(200);
        client.send("DELETE", one, "", new byte[0]).is(204);
        client.send("DELETE", one, "", new byte[0]).isProblem(404, "not-found");
        client.get(one + ".jpg").isProblem(404, "not-found");
    }
}
