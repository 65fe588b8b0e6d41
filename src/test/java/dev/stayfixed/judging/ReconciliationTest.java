package dev.stayfixed.judging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import dev.stayfixed.archive.Archive;
import dev.stayfixed.jobs.Shops;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.platform.OnH2;
import dev.stayfixed.platform.storage.Durably;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import dev.stayfixed.web.Shop;
import java.time.Duration;
import java.util.Arrays;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.DefaultApplicationArguments;
import org.springframework.boot.test.system.CapturedOutput;
import org.springframework.boot.test.system.OutputCaptureExtension;
import org.springframework.boot.test.web.server.LocalServerPort;
import org.springframework.jdbc.core.simple.JdbcClient;

@OnH2
class ReconciliationTest {

    @LocalServerPort
    int port;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    Reconciliation reconciliation;

    @Autowired
    ProgramName program;

    @Autowired
    Shops shops;

    @Autowired
    Vehicles vehicles;

    @Autowired
    Archive archive;

    @Autowired
    Folding folding;

    @Autowired
    Judging judging;

    @Autowired
    Durably durably;

    @Test
    void itBeginsWithTheService() {
        assertThatThrownBy(() -> reconciliation.run(new DefaultApplicationArguments()))
                .as("started once already")
                .isInstanceOf(IllegalThreadStateException.class);
    }

    @Test
    void whatAnotherProgramJudgedIsMadeAgainFromTheSubmissions() {
        Passing car = passing("judged by another");
        Answer before = client().get("/api/v1/drives/" + car.driveId());
        loseDrive(car);
        tamper(car);
        judgedBy(car, "two-trip 1999.1");

        reconciliation.run();

        assertThat(car.standing()).isEqualTo("1 of 2 clean trips");
        Answer after = client().get("/api/v1/drives/" + car.driveId());
        assertThat(after.body()).isEqualTo(before.body());
        assertThat(after.etag()).isEqualTo("\"2\"");
        assertThat(judgedBy(car)).isEqualTo(program.text());
    }

    @Test
    void whatNobodyIsKnownToHaveJudgedIsJudged() {
        Passing car = passing("judged by nobody");
        tamper(car);
        judgedBy(car, null);

        reconciliation.run();

        assertThat(car.standing()).isEqualTo("1 of 2 clean trips");
        assertThat(judgedBy(car)).isEqualTo(program.text());
    }

    @Test
    void aDriveThatIsLostIsFiledAgainWhoeverJudgedIt() {
        Passing car = passing("after a loss");
        loseDrive(car);
        tamper(car);

        reconciliation.run();

        assertThat(client().get("/api/v1/drives/" + car.driveId()).is(200).etag())
                .isEqualTo("\"2\"");
        assertThat(car.standing()).isEqualTo("1 of 2 clean trips");
    }

    @Test
    void whatThisProgramJudgedIsLeftAloneUnlessAskedFor() {
        Passing car = passing("judged by this one");
        tamper(car);

        reconciliation.run();
        assertThat(car.standing()).isEqualTo("recurred");

        asked().run();
        assertThat(car.standing()).isEqualTo("1 of 2 clean trips");
    }

    /** H2 answers as a database that is there without its tables; the table is back before anybody else asks for it. */
    @Test
    @ExtendWith(OutputCaptureExtension.class)
    void whereTheDatabaseIsAwayItIsTriedAgain(CapturedOutput output) throws Exception {
        Passing car = passing("while the database was away");
        tamper(car);
        Reconciliation late = asked();
        jdbc.sql("alter table vehicle rename to vehicle_away").update();
        try {
            late.run(new DefaultApplicationArguments());
            await().until(() -> output.getOut().contains("it is tried again"));
        } finally {
            jdbc.sql("alter table vehicle_away rename to vehicle").update();
        }

        await().until(() -> car.standing().equals("1 of 2 clean trips"));
        late.destroy();
    }

    @Test
    void anotherMeaningOfComebackMakesEveryVehicleDue() {
        Passing car = passing("of another meaning");
        Answer settings = client().get("/api/v1/notification-settings").is(200);
        change(settings, "\"silentDays\":7", "\"silentDays\":8");
        assertThat(judgedBy(car)).isEqualTo(program.text());

        change(client().get("/api/v1/notification-settings"), "\"comebackDays\":90", "\"comebackDays\":60");
        assertThat(judgedBy(car)).isNull();

        change(client().get("/api/v1/notification-settings"), "\"comebackDays\":60", "\"comebackDays\":90");
        reconciliation.run();
    }

    private void change(Answer settings, String found, String wanted) {
        assertThat(settings.body()).contains(found);
        client().put(
                        "/api/v1/notification-settings",
                        settings.body().replace(found, wanted),
                        "If-Match",
                        settings.etag())
                .is(200);
    }

    /** A car with one drive, which was corrected and passed. */
    private record Passing(Shop shop, Answer vehicle, Answer job, Answer drive) {

        UUID vehicleId() {
            return UUID.fromString(vehicle.id());
        }

        UUID driveId() {
            return UUID.fromString(drive.id());
        }

        String standing() {
            return shop.standing(job);
        }
    }

    private Passing passing(String description) {
        Shop shop = new Shop(client());
        Answer vehicle = shop.vehicle(description);
        Answer job = shop.job(vehicle);
        shop.repair(job, "2026-06-01T10:00:00Z");
        Answer drive =
                shop.drive(vehicle, "2026-06-02T08:00:00Z", Shop.DID_NOT_RUN).is(201);
        shop.correct(drive, "2026-06-02T09:00:00Z", Shop.RAN_CLEAN).is(200);
        Passing car = new Passing(shop, vehicle, job, drive);
        assertThat(car.standing()).isEqualTo("1 of 2 clean trips");
        return car;
    }

    private Client client() {
        return new Client(port);
    }

    private Reconciliation asked() {
        JudgeAgain everything = new JudgeAgain(true, Duration.ZERO, Duration.ofMillis(20));
        return new Reconciliation(shops, vehicles, archive, folding, judging, program, everything, durably);
    }

    private void loseDrive(Passing car) {
        assertThat(jdbc.sql("delete from drive where id = ?")
                        .param(car.driveId())
                        .update())
                .isOne();
        client().get("/api/v1/drives/" + car.driveId()).isProblem(404, "not-found");
    }

    private void tamper(Passing car) {
        jdbc.sql("""
                        update fault set standing_state = 'RECURRED'
                        where job_id in (select id from job where vehicle_id = ?)""").param(car.vehicleId()).update();
        assertThat(car.standing()).isEqualTo("recurred");
    }

    private void judgedBy(Passing car, @Nullable String name) {
        jdbc.sql("update vehicle set judged_by = ? where id = ?")
                .params(Arrays.asList(name, car.vehicleId()))
                .update();
    }

    private @Nullable String judgedBy(Passing car) {
        return jdbc.sql("select judged_by from vehicle where id = ?")
                .param(car.vehicleId())
                .query((row, number) -> Optional.ofNullable(row.getString("judged_by")))
                .single()
                .orElse(null);
    }
}
