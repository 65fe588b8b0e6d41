package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What has to reach the workshop at once, whatever the rule makes of it. SAE J1979 $01 PID $01, $03 and $07; ISO 14229-1 $19. */
abstract class AlertStories extends OverHttp {

    private static final String LAMP = "{\"start\":\"%s\",\"summary\":{\"runTime\":1200,\"milOn\":%s}}";

    private Answer lamp(Answer vehicle, String start, boolean on) {
        return client.post("/api/v1/vehicles/" + vehicle.id() + "/drives", LAMP.formatted(start, on));
    }

    private List<String> told(Answer job, String kind) {
        return told(job, kind, false);
    }

    private List<String> told(Answer job, String kind, boolean unread) {
        List<String> told = new ArrayList<>();
        client.get("/api/v1/inbox?limit=200&unread=" + unread)
                .is(200)
                .json()
                .at("/items")
                .forEach(event -> {
                    if (event.at("/jobId").asString("").equals(job.id())
                            && event.at("/kind").asString().equals(kind)) {
                        told.add(event.at("/summary").asString());
                    }
                });
        Collections.reverse(told);
        return told;
    }

    private static List<String> warnings(Answer drive) {
        List<String> warnings = new ArrayList<>();
        drive.json().at("/warnings").forEach(warning -> warnings.add(warning.asString()));
        return warnings;
    }

    private Answer fixed(Answer vehicle) {
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");
        return job;
    }

    @Test
    void aDriverWhoSeesTheLampIsHeardOnceEvenWhenAllIsConfirmedFixed() {
        Answer vehicle = shop.vehicle("2013 estate, lamp by the driver");
        Answer job = fixed(vehicle);
        Answer on = lamp(vehicle, "2026-06-10T08:00:00Z", true).is(201);
        assertThat(warnings(on)).anyMatch(warning -> warning.contains("the malfunction lamp (MIL) was on"));
        assertThat(told(job, "LAMP_ON"))
                .containsExactly(
                        "2013 estate, lamp by the driver: lamp reported on. The malfunction lamp (MIL) was on in this"
                                + " drive, and was not known to be on before; read the codes.");
        assertThat(shop.standing(job)).isEqualTo("confirmed fixed");

        lamp(vehicle, "2026-06-10T08:00:00Z", true).is(200);
        Answer still = lamp(vehicle, "2026-06-11T08:00:00Z", true).is(201);
        assertThat(warnings(still)).isEmpty();
        assertThat(told(job, "LAMP_ON")).hasSize(1);

        lamp(vehicle, "2026-06-12T08:00:00Z", false).is(201);
        lamp(vehicle, "2026-06-13T08:00:00Z", true).is(201);
        assertThat(told(job, "LAMP_ON")).as("off and on again").hasSize(2);
        assertThat(warnings(client.get("/api/v1/drives/" + on.id()).is(200))).hasSize(1);
    }

    @Test
    void aLateDriveThatShowsWhatIsToldAlreadyIsNotToldAgain() {
        Answer vehicle = shop.vehicle("2013 van, late lamp");
        Answer job = fixed(vehicle);
        lamp(vehicle, "2026-06-11T08:00:00Z", true).is(201);
        lamp(vehicle, "2026-06-10T08:00:00Z", true).is(201);
        assertThat(told(job, "LAMP_ON")).hasSize(1);
    }

    @Test
    void aDriveThatIsLeftOutTakesItsAlertBack() {
        Answer vehicle = shop.vehicle("2013 coupe, lamp of another car");
        Answer job = fixed(vehicle);
        Answer on = lamp(vehicle, "2026-06-10T08:00:00Z", true).is(201);
        String path = "/api/v1/drives/" + on.id() + "/left-out";
        client.put(path, "{\"reason\":\"it was the other coupe\"}").is(200);
        assertThat(told(job, "ALERT_TAKEN_BACK"))
                .singleElement()
                .satisfies(summary -> assertThat(summary)
                        .contains("left out of the count (it was the other coupe)")
                        .contains("lamp reported on"));
        assertThat(told(job, "LAMP_ON", true))
                .as("nobody needs to read it any more")
                .isEmpty();
        client.send("DELETE", path, "", new byte[0]).is(200);
        assertThat(told(job, "LAMP_ON"))
                .as("it counts again, and is told again")
                .hasSize(2);
    }

    @Test
    void aNextDriveSpeaksUpWhereTheFirstIsLeftOut() {
        Answer vehicle = shop.vehicle("2013 saloon, two lamps");
        Answer job = fixed(vehicle);
        Answer first = lamp(vehicle, "2026-06-10T08:00:00Z", true).is(201);
        Answer second = lamp(vehicle, "2026-06-11T08:00:00Z", true).is(201);
        client.put("/api/v1/drives/" + first.id() + "/left-out", "{\"reason\":\"wrong car\"}")
                .is(200);
        assertThat(warnings(client.get("/api/v1/drives/" + second.id()))).hasSize(1);
        assertThat(told(job, "LAMP_ON", true))
                .as("the first is read, the second is told")
                .hasSize(1);
        assertThat(told(job, "LAMP_ON")).hasSize(2);
    }

    @Test
    void aReaderThatShowsANewCodeIsHeardOnce() {
        Answer vehicle = shop.vehicle("2013 pick-up, new code");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        String scan = "41 41 00 07 65 00\\n47 01 04 42\\n43 01 01 13\\n41 01 81 07 65 00";
        Answer drive = shop.drive(vehicle, "2026-06-02T08:00:00Z", scan).is(201);
        assertThat(warnings(drive))
                .anyMatch(warning -> warning.contains("P0442, P0113 are new for this vehicle"))
                .anyMatch(warning -> warning.contains("lamp"));
        assertThat(told(job, "NEW_CODE"))
                .singleElement()
                .satisfies(summary -> assertThat(summary).contains("P0442").contains("P0113"));
        assertThat(told(job, "LAMP_ON")).hasSize(1);
        assertThat(shop.standing(job)).isEqualTo("1 of 2 clean trips");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", scan).is(201);
        assertThat(told(job, "NEW_CODE")).hasSize(1);
        assertThat(told(job, "LAMP_ON")).hasSize(1);
    }

    @Test
    void theJobsOwnCodeIsNoNewsAndNeitherIsAnUntestedOne() {
        Answer vehicle = shop.vehicle("2013 hatchback, own code");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive = shop.drive(
                        vehicle, "2026-06-02T08:00:00Z", Shop.RAN_AND_FAILED + "\\n59 02 FF 01 13 00 50 01 35 00 10")
                .is(201);
        assertThat(warnings(drive)).isEmpty();
        assertThat(told(job, "NEW_CODE")).isEmpty();
        Answer failing = shop.drive(vehicle, "2026-06-03T08:00:00Z", "59 02 FF 01 13 00 2F")
                .is(201);
        assertThat(warnings(failing)).anyMatch(warning -> warning.contains("P0113"));
        assertThat(told(job, "NEW_CODE")).hasSize(1);
    }

    @Test
    void aLampThatBurnedAtTheOpeningIsNoNewsUntilTheCodesAreCleared() {
        Answer vehicle = shop.vehicle("2013 taxi, lamp at the opening");
        Answer job = client.post(
                        "/api/v1/jobs",
                        "{\"vehicleId\":\"%s\",\"openedAt\":\"2026-06-01T08:00:00Z\",\"scan\":\"43 01 04 20\\n41 01 81 07 65 00\"}"
                                .formatted(vehicle.id()))
                .is(201);
        assertThat(warnings(lamp(vehicle, "2026-06-01T08:30:00Z", true).is(201)))
                .isEmpty();
        shop.repair(job, "2026-06-01T10:00:00Z");
        assertThat(warnings(lamp(vehicle, "2026-06-02T08:00:00Z", true).is(201)))
                .hasSize(1);
        assertThat(told(job, "LAMP_ON")).hasSize(1);
    }

    @Test
    void aClosedJobIsToldAsLongAsAComebackWouldCount() {
        Answer vehicle = shop.vehicle("2013 minibus, closed");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-01-05T10:00:00Z");
        shop.close(job, "{\"reason\":\"sold\"}").is(200);
        lamp(vehicle, "2026-03-10T08:00:00Z", true).is(201);
        assertThat(told(job, "LAMP_ON")).hasSize(1);
        lamp(vehicle, "2026-03-11T08:00:00Z", false).is(201);
        Answer late = lamp(vehicle, "2026-05-20T08:00:00Z", true).is(201);
        assertThat(told(job, "LAMP_ON")).as("90 days after the repair are over").hasSize(1);
        assertThat(warnings(late)).as("the answer says it all the same").hasSize(1);
    }

    @Test
    void aLampAndACountThatContradictTheListsAreSaid() {
        Answer vehicle = shop.vehicle("2013 roadster, count");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive = shop.drive(
                        vehicle,
                        "2026-06-02T08:00:00Z",
                        "7E8 06 41 01 82 07 65 00\\n7E8 04 43 01 04 20\\n7E9 06 41 01 80 04 00 00\\n7E9 02 43 00")
                .is(201);
        assertThat(warnings(drive))
                .contains(
                        "scan 1: the count of confirmed codes beside the MIL (PID $01) is 2 (control unit 7E8), but service"
                                + " $03 lists P0420")
                .contains("scan 1: the MIL is commanded on, but no confirmed code is counted (control unit 7E9)");
    }

    @Test
    void aDriveFromBeforeTheRepairSaysSoAndSoDoesOneBeforeAny() {
        Answer vehicle = shop.vehicle("2013 cabriolet, early drive");
        Answer job = shop.job(vehicle);
        Answer none =
                shop.drive(vehicle, "2026-05-20T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(none.at("/effects/0/reason")).contains("no repair of this fault is recorded yet");
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer early =
                shop.drive(vehicle, "2026-05-30T08:00:00Z", Shop.RAN_CLEAN).is(201);
        assertThat(early.json().at("/effects/0").has("outcome")).isFalse();
        assertThat(early.at("/effects/0/reason"))
                .isEqualTo(
                        "this drive is from before the repair of 1 June 2026 10:00 UTC and does not count for it; if a date is"
                                + " wrong, correct that of the drive or that of the repair");
        assertThat(shop.standing(job)).isEqualTo("waiting for its first trip");
    }
}
