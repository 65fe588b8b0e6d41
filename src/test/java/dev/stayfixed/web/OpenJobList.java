package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.intake.Attention;
import dev.stayfixed.intake.OpenJob;
import dev.stayfixed.intake.OpenJobs;
import dev.stayfixed.jobs.ShopSettings;
import dev.stayfixed.jobs.Shops;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;

/** The list of open jobs and the settings of the shop. */
abstract class OpenJobList extends OverHttp {

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
