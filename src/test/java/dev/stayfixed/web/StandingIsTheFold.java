package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.drive.DriveRecord;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.jobs.Standing;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.Scan;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.RepairAttempt;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.RuleSet;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.Verification;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** After any history, in any order of arrival, what is stored is what the rule says of all drives in their order. */
abstract class StandingIsTheFold extends OverHttp {

    private static final List<String> SCANS =
            List.of(Shop.RAN_CLEAN, Shop.RAN_CLEAN, Shop.DID_NOT_RUN, Shop.RAN_AND_FAILED, Shop.RAN_AND_CONFIRMED);
    private static final Instant FIRST = Instant.parse("2026-05-01T06:00:00Z");

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void whatIsStoredIsWhatTheRuleSays(long seed) {
        Random random = new Random(seed);
        Answer vehicle = shop.vehicle("random history " + seed);
        Trips trips = random.nextBoolean() ? Trips.ONE : Trips.TWO;
        Answer job = shop.job(vehicle, "{\"code\":\"P0420\",\"trips\":\"%s\"}".formatted(trips));
        List<Instant> repairs = repairs(random);
        repairs.forEach(at -> shop.repair(job, at.toString()));

        Map<Instant, String> truth = new TreeMap<>();
        List<Integer> days =
                new ArrayList<>(java.util.stream.IntStream.range(1, 14).boxed().toList());
        Collections.shuffle(days, random);
        for (int day : days) {
            Instant start = FIRST.plus(Duration.ofDays(day));
            String scan = SCANS.get(random.nextInt(SCANS.size()));
            Answer drive = shop.drive(vehicle, start.toString(), scan).is(201);
            truth.put(start, scan);
            if (random.nextInt(4) == 0) {
                String corrected = SCANS.get(random.nextInt(SCANS.size()));
                shop.correct(drive, start.toString(), corrected).is(200);
                truth.put(start, corrected);
            }
            if (random.nextInt(4) == 0) {
                shop.drive(vehicle, start.toString(), truth.get(start)).is(200);
            }
            if (random.nextInt(4) == 0) {
                client.put("/api/v1/drives/" + drive.id() + "/left-out", "{\"reason\":\"random\"}")
                        .is(200);
                truth.remove(start);
            }
            assertThat(shop.standing(job)).as("after day " + day).isEqualTo(byTheRule(trips, repairs, truth));
        }
        assertThat(shop.verdicts(job).at("/faults/0/standing/words")).isEqualTo(shop.standing(job));
    }

    private static List<Instant> repairs(Random random) {
        List<Instant> repairs = new ArrayList<>();
        for (int i = 0; i <= random.nextInt(2); i++) {
            repairs.add(FIRST.plus(Duration.ofDays(random.nextInt(10))).plus(Duration.ofHours(5)));
        }
        return repairs;
    }

    private static String byTheRule(Trips trips, List<Instant> repairs, Map<Instant, String> drives) {
        RepairedFault fault = RepairedFault.of(TroubleCode.parse("P0420"), Ignition.SPARK, trips);
        List<RepairAttempt> attempts = repairs.stream()
                .map(at -> new RepairAttempt(at.toString(), at, true, Optional.empty(), Optional.empty()))
                .toList();
        List<DriveRecord> records = drives.entrySet().stream()
                .map(e -> new DriveRecord(
                        e.getKey().toString(),
                        e.getKey(),
                        Optional.empty(),
                        new DriveSummary(
                                Map.of(dev.stayfixed.drive.DriveQuantity.RUN_TIME, 1800.0),
                                List.of(),
                                Optional.empty()),
                        false,
                        List.of(new DriveRecord.TimedScan(
                                DriveRecord.Moment.AFTER, Scan.read(e.getValue().replace("\\n", "\n"))))))
                .toList();
        return Standing.of(
                        new Verification(RuleSet.STANDARD)
                                .of(fault, attempts, records)
                                .state(),
                        fault.requiredPasses())
                .words();
    }
}
