package dev.stayfixed.simulator;

import static dev.stayfixed.English.words;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.Count;
import dev.stayfixed.archive.DriveSubmission;
import dev.stayfixed.archive.Original;
import dev.stayfixed.drive.DriveRecord.Moment;
import dev.stayfixed.intake.Intake;
import dev.stayfixed.jobs.Job;
import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.jobs.Repair;
import dev.stayfixed.jobs.Vehicle;
import dev.stayfixed.jobs.Vehicles;
import dev.stayfixed.judging.CaseFiles;
import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.InDefaultShop;
import dev.stayfixed.platform.SetClock;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.context.annotation.Import;
import tools.jackson.databind.json.JsonMapper;

/**
 * Seeded cars through the real intake, their drives delivered late and out of order: the verdict is that of the observer who knows
 * every driving cycle (13 CCR 1968.2 (d)(2.2)). The intake must not change what {@link VerdictsAgreeTest} finds of more cars, so
 * 60 cars a test are enough; {@code -Dstayfixed.fleet=2000} asks for more.
 */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.NONE,
        properties = "spring.datasource.url=jdbc:h2:mem:fleet;MODE=PostgreSQL;DB_CLOSE_DELAY=-1")
@Import(SetClock.class)
@ExtendWith(InDefaultShop.class)
class FleetTest {

    private static final int CARS = Count.of("stayfixed.fleet", 60, 60);

    private final JsonMapper json = JsonMapper.shared();

    @Autowired
    private Vehicles vehicles;

    @Autowired
    private Jobs jobs;

    @Autowired
    private Intake intake;

    @Autowired
    private CaseFiles files;

    @Test
    @DisplayName("with PID $41, $03, $07 and the counters it is the observer's wherever readiness can show it")
    void everyVerdictThatReadinessCanShowIsTheObservers() {
        int compared = 0;
        List<String> differing = new ArrayList<>();
        // other cars than those of the other test: a vehicle is registered once
        for (long seed = CARS; seed < 2L * CARS; seed++) {
            CarHistory history = CarHistory.of(seed, Ask.CODES_AND_READINESS);
            Verdict judged = throughIntake(seed, history);
            if (VerdictsAgreeTest.isShownByReadiness(history, judged)) {
                compared++;
                VerdictsAgreeTest.differing(seed, history, judged).ifPresent(differing::add);
            }
        }
        assertThat(differing).isEmpty();
        assertThat(compared).isGreaterThan(CARS / 3);
    }

    @Test
    @DisplayName(
            "with status bytes the stored verdict is the observer's, on every car whose failures anybody could know of")
    void everyVerdictIsTheObservers() {
        int compared = 0;
        List<String> differing = new ArrayList<>();
        for (long seed = 0; seed < CARS; seed++) {
            CarHistory history = CarHistory.of(seed, Ask.EVERYTHING);
            if (history.isHidden()) {
                continue;
            }
            compared++;
            VerdictsAgreeTest.differing(seed, history, throughIntake(seed, history))
                    .ifPresent(differing::add);
        }
        assertThat(differing).isEmpty();
        assertThat(compared).isGreaterThan(CARS * 4 / 5);
    }

    private Verdict throughIntake(long seed, CarHistory history) {
        RepairedFault fault = VerdictsAgreeTest.fault(history);
        Vehicle vehicle = vehicles.register(new Vehicle.Details(
                Optional.of(Vin.parse(history.car().vin())),
                Optional.empty(),
                "car " + seed,
                OptionalInt.empty(),
                fault.ignition()));
        Job job = jobs.open(new Job.Opening(
                vehicle.id(),
                new Job.Labels(Optional.empty(), Optional.empty(), Optional.empty()),
                history.repairs().get(0).at(),
                Optional.empty(),
                List.of(fault)));
        UUID faultId = job.faults().get(0).id();
        history.repairs().forEach(repair -> jobs.recordRepair(job.id(), Set.of(faultId), details(repair)));
        history.delivered()
                .forEach(drive -> intake.receive(
                        vehicle.id(), new Original(Original.JSON, json.writeValueAsString(submission(drive)))));
        Verdict replayed = files.ofJob(job.id()).verdict(job.id(), faultId).verdict();
        assertThat(jobs.get(job.id()).faults().get(0).standing().words())
                .as("car %d: what is stored is the fold", seed)
                .isEqualTo(words(replayed.state().said()));
        return replayed;
    }

    private static Repair.Details details(CarHistory.RepairDone repair) {
        return new Repair.Details(
                repair.at(),
                "repaired",
                List.of(),
                Optional.empty(),
                repair.cleared(),
                Optional.of(repair.scanBefore()),
                Optional.of(repair.scanAfter()),
                List.of());
    }

    private static DriveSubmission submission(CarHistory.Drive drive) {
        CycleTruth truth = drive.truth();
        Summary summary = truth.summary();
        return DriveSubmission.said(
                truth.start(),
                truth.end(),
                null,
                new DriveSubmission.Summary(
                        (double) summary.startCoolant(),
                        (double) summary.peakCoolant(),
                        (double) summary.runTime(),
                        (double) summary.fastTime(),
                        (double) summary.longestIdle(),
                        (double) summary.ambient(),
                        (double) summary.barometer(),
                        summary.fuelLevel(),
                        summary.soak(),
                        summary.distance(),
                        null,
                        truth.samples().stream()
                                .map(VerdictsAgreeTest::point)
                                .map(at -> new DriveSubmission.Point(at.engineSpeed(), at.load(), at.coolant()))
                                .toList()),
                drive.toldCleared(),
                List.of(
                        new DriveSubmission.PastedScan(Moment.BEFORE, drive.scanBefore()),
                        new DriveSubmission.PastedScan(Moment.AFTER, drive.scanAfter())));
    }
}
