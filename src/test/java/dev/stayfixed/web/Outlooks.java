package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What is beside the verdict: the next drive, the inspection, and how sure an all-clear is. */
abstract class Outlooks extends OverHttp {

    @Test
    void theNextDriveIsOnePlanForAllOpenFaultsInOrderWithCautionsAndSources() {
        Answer vehicle = shop.vehicle("2013 saloon");
        Answer job = shop.job(vehicle, "{\"code\":\"P0420\"},{\"code\":\"P0141\"}");
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer plan = client.get("/api/v1/jobs/" + job.id() + "/next-drive").is(200);
        assertThat(plan.json().at("/plans").size()).isEqualTo(1);
        assertThat(plan.at("/plans/0/faults/0")).isEqualTo("P0420");
        assertThat(plan.at("/plans/0/faults/1")).isEqualTo("P0141");
        assertThat(plan.at("/plans/0/lines/0")).startsWith("Before the drive");
        assertThat(plan.at("/plans/0/lines/" + (plan.json().at("/plans/0/lines").size() - 1)))
                .startsWith("Key off");
        assertThat(plan.at("/plans/0/cautions/0")).startsWith("Traffic law");
        assertThat(plan.at("/plans/0/sources/0"))
                .isEqualTo(
                        "Typical figures (a maker's service text, 2003); the service information of this vehicle overrides"
                                + " them.");
        assertThat(plan.at("/plans/0/likelihood")).startsWith("No recorded drive of this car tells");
    }

    @Test
    void whatTheShopAgreedComesBeforeWhatIsTypical() {
        Answer vehicle = shop.vehicle("2013 saloon");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        client.post("/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id") + "/conditions", LogStories.STEADY)
                .is(201);
        Answer plan = client.get("/api/v1/jobs/" + job.id() + "/next-drive").is(200);
        assertThat(plan.json().at("/plans/0/lines").toString()).contains("70 to 110 km/h");
        assertThat(plan.at("/plans/0/sources/0")).startsWith("For P0420: its enabling conditions");
    }

    @Test
    void aDecidedJobNeedsNoDrive() {
        Answer vehicle = shop.vehicle("2013 saloon");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        Answer plan = client.get("/api/v1/jobs/" + job.id() + "/next-drive").is(200);
        assertThat(plan.json().at("/plans").size()).isZero();
        assertThat(plan.json().at("/unplanned").size()).isZero();
    }

    @Test
    void anInspectionIsOnlyEverLikelyUnderARuleBecauseOfSomething() {
        Answer vehicle = client.post("/api/v1/vehicles", "{\"description\":\"2012 van\",\"modelYear\":2012}")
                .is(201);
        Answer job = shop.job(vehicle);
        Answer unknown =
                client.get("/api/v1/vehicles/" + vehicle.id() + "/inspection").is(200);
        assertThat(unknown.at("/caution")).startsWith("Advisory only");
        assertThat(unknown.at("/outlooks/0/words"))
                .isEqualTo(
                        "not to be told from these scans under EPA guidance EPA420-R-01-015 (June 2001), because no scan has"
                                + " read PID $01");
        shop.drive(vehicle, "2026-06-01T08:00:00Z", "41 01 00 07 E5 00").is(201);
        assertThat(client.get("/api/v1/vehicles/" + vehicle.id() + "/inspection")
                        .at("/outlooks/0/likely"))
                .isEqualTo("READY");
        shop.repair(job, "2026-06-02T10:00:00Z");
        assertThat(client.get("/api/v1/vehicles/" + vehicle.id() + "/inspection")
                        .at("/outlooks/0/likely"))
                .as("codes were cleared since that scan")
                .isEqualTo("UNKNOWN");
        shop.drive(vehicle, "2026-06-03T08:00:00Z", "41 01 00 07 E5 E5").is(201);
        assertThat(client.get("/api/v1/vehicles/" + vehicle.id() + "/inspection")
                        .at("/outlooks/1/likely"))
                .isEqualTo("NOT_READY");
    }

    @Test
    void anIntermittentFaultSaysHowSureTheAllClearIs() {
        Answer vehicle = shop.vehicle("2010 coupe");
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.RAN_CLEAN).is(201);
        shop.drive(vehicle, "2026-06-03T08:00:00Z", Shop.RAN_CLEAN).is(201);
        String path = "/api/v1/jobs/" + job.id() + "/faults/" + job.at("/faults/0/id") + "/confidence";
        assertThat(client.get(path).is(200).at("/words"))
                .startsWith("How often it failed before the repair is not known");
        Answer stated = client.put(path, "{\"failed\":3,\"monitored\":10,\"wantedConfidence\":0.8}")
                .is(200);
        assertThat(stated.at("/cleanTrips")).isEqualTo("2");
        assertThat(stated.at("/neededCleanTrips")).isEqualTo("5");
        assertThat(stated.at("/reached")).isEqualTo("false");
        assertThat(stated.at("/words"))
                .isEqualTo(
                        "Before the repair it failed in 3 of 10 monitored trips; the rate itself may be anything from 7 % to"
                                + " 65 % (95 %). 2 clean trips in a row would come about in 46 % of cases although the fault is as it"
                                + " was. For 80 % confidence it takes 5.");
        assertThat(client.get(path).at("/failed")).isEqualTo("3");
        client.put(path, "{\"failed\":11,\"monitored\":10}").isProblem(422, "invalid-content");
        client.put(path, "{\"failed\":-1,\"monitored\":10}").isProblem(422, "invalid-content");
        client.put(path, "{\"failed\":1,\"monitored\":10,\"wantedConfidence\":1}")
                .isProblem(422, "invalid-content");
        client.get("/api/v1/jobs/" + job.id() + "/faults/" + job.id() + "/confidence")
                .isProblem(404, "not-found");
    }
}
