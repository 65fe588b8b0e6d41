package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The report on a job for somebody outside the shop: who may read it, until when, and that it can be read only. */
abstract class SharedReportStories extends OverHttp {

    private Answer job;

    @BeforeEach
    void aProvenJob() {
        Answer vehicle = shop.vehicle("silver estate");
        job = shop.job(vehicle);
        client.post("/api/v1/jobs/" + job.id() + "/repairs", """
                        {"performedAt":"2026-06-01T10:00:00Z","description":"Catalyst replaced","codesCleared":true,
                         "measurements":[{"quantity":"back pressure","unit":"kPa","expectedMax":3,"before":9.5,"after":1.2}]}""").is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-04T08:00:00Z", Shop.RAN_CLEAN).is(201);
    }

    private String link() {
        String url = client.post("/api/v1/jobs/" + job.id() + "/report-link", "")
                .is(201)
                .at("/url");
        return url.substring(url.indexOf("/r/"));
    }

    @Test
    void aStrangerWithTheLinkReadsTheVerdictWithItsEvidence() {
        Answer page = client.get(link()).is(200);
        assertThat(page.body())
                .contains(
                        "P0420", "confirmed fixed", "back pressure: before 9.5, after 1.2 kPa", "(expected at most 3)")
                .doesNotContain("<form", "/jobs/" + job.id(), "Issue");
        assertThat(page.header("X-Robots-Tag")).isEqualTo("noindex, nofollow");
        assertThat(page.header("Cache-Control")).isEqualTo("no-store");
    }

    @Test
    void thePaperIsThereOnceItWasIssued() {
        String link = link();
        assertThat(client.get(link + "/report.pdf").is(404).body()).contains("Nothing issued yet");
        client.post("/api/v1/jobs/" + job.id() + "/report", "").is(201);
        assertThat(client.get(link + "/report.pdf").is(200).header("Content-Type"))
                .startsWith("application/pdf");
    }

    @Test
    void aLinkThatWasEndedShowsNothingAndOneThatNeverWasLikewise() {
        String link = link();
        String other = link();
        client.send("DELETE", "/api/v1/jobs/" + job.id() + "/report-link", "", new byte[0])
                .is(204);
        for (String ended : java.util.List.of(link, other, link + "/report.pdf")) {
            assertThat(client.get(ended).is(410).body())
                    .contains("This link has ended")
                    .doesNotContain("P0420");
        }
        assertThat(client.get("/r/AAAAAAAAAAAAAAAAAAAAAAAA").is(404).body()).doesNotContain("P0420");
        client.get("/r/x").is(404);
        client.get(link.replace("/r/", "/d/")).is(404);
        client.post(link, "{}").is(405);
    }

    @Test
    void itsTokenIsNotKept() {
        String token = link().substring(3);
        assertThat(jdbc.sql("select count(*) from report_link where token_hash like ?")
                        .param("%" + token + "%")
                        .query(Long.class)
                        .single())
                .isZero();
    }
}
