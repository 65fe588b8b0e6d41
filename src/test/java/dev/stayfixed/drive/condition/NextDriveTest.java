package dev.stayfixed.drive.condition;

import static dev.stayfixed.English.words;
import static dev.stayfixed.drive.signal.Signal.AMBIENT;
import static dev.stayfixed.drive.signal.Signal.COOLANT;
import static dev.stayfixed.drive.signal.Signal.ENGINE_SPEED;
import static dev.stayfixed.drive.signal.Signal.FUEL_LEVEL;
import static dev.stayfixed.drive.signal.Signal.INTAKE_AIR;
import static dev.stayfixed.drive.signal.Signal.PEDAL;
import static dev.stayfixed.drive.signal.Signal.THROTTLE;
import static dev.stayfixed.drive.signal.Signal.VEHICLE_SPEED;
import static org.assertj.core.api.Assertions.assertThat;

import dev.stayfixed.English;
import dev.stayfixed.drive.DriveQuantity;
import dev.stayfixed.drive.DriveSummary;
import dev.stayfixed.drive.Finding;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The faults, figures and merged plans are a scenario of our own. */
class NextDriveTest {

    private static final SignalRange WARM = SignalRange.atLeast(COOLANT, 70);
    private static final Condition SOAK = new Soak(Duration.ofHours(8));
    private static final Condition FUEL = new AtStart(new SignalRange(FUEL_LEVEL, 15, 85));
    private static final Condition WARM_UP = Reach.value(COOLANT, 70);
    private static final Condition CRUISE =
            Hold.unbroken(new SignalRange(VEHICLE_SPEED, 70, 110), Duration.ofMinutes(1), WARM);
    private static final Condition COAST = Hold.cumulative(
            new SignalRange(VEHICLE_SPEED, 30, 110), Duration.ofSeconds(10), SignalRange.atMost(PEDAL, 15));
    private static final Condition IDLE = Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 2), Duration.ofSeconds(30));
    private static final Condition WARM_IDLE =
            Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 2), Duration.ofMinutes(2), WARM);

    private static NextDrive.Need need(String fault, Condition... conditions) {
        return new NextDrive.Need(fault, List.of(conditions));
    }

    private static List<DrivePlan> plans(NextDrive.Need... needs) {
        return NextDrive.of(List.of(needs)).plans();
    }

    @Test
    void the_steps_stand_in_the_order_in_which_they_are_driven() {
        List<DrivePlan> plans =
                plans(need("P0420", WARM_IDLE, COAST, CRUISE, WARM_UP), need("P0442", IDLE, FUEL, SOAK));
        assertThat(plans).hasSize(1);
        assertThat(plans.get(0).faults()).containsExactly("P0420", "P0442");
        assertThat(plans.get(0).lines().stream().map(English::words))
                .containsExactly(
                        "Before the drive: Leave the engine off for at least 8 h before the start. (for P0442)",
                        "Start: Start only with fuel level 15 to 85 %. (for P0442)",
                        "Idle: Let the engine idle at a standstill for at least 30 s without a break. (for P0442)",
                        "Warm up: Drive gently until coolant temperature of 70 °C is reached. (for P0420)",
                        "Cruise: Keep vehicle speed 70 to 110 km/h for at least 60 s without a break,"
                                + " with coolant temperature at least 70 °C. (for P0420)",
                        "Coast: Take the foot off the pedal and let the car slow down by itself, traffic allowing, for at least"
                                + " 10 s, in one or more pieces (vehicle speed 30 to 110 km/h, with accelerator pedal at most"
                                + " 15 %). (for P0420)",
                        "Idle, warm: Let the engine idle at a standstill for at least 2 min without a break,"
                                + " with coolant temperature at least 70 °C. (for P0420)",
                        "Key off: Park, switch the engine off, and do not clear any code before the data are saved.");
    }

    @Test
    void what_two_faults_need_alike_is_driven_once() {
        Condition slower = Hold.unbroken(
                new SignalRange(VEHICLE_SPEED, 60, 90), Duration.ofMinutes(2), SignalRange.atLeast(COOLANT, 75));
        DrivePlan plan = plans(
                        need("P0420", SOAK, FUEL, WARM_UP, CRUISE),
                        need(
                                "P0133",
                                new Soak(Duration.ofHours(6)),
                                new AtStart(SignalRange.atLeast(FUEL_LEVEL, 20)),
                                Reach.value(COOLANT, 80).within(Duration.ofMinutes(15)),
                                slower))
                .get(0);
        assertThat(plan.steps())
                .extracting(DriveStep::condition)
                .containsExactly(
                        SOAK,
                        new AtStart(new SignalRange(FUEL_LEVEL, 20, 85)),
                        Reach.value(COOLANT, 80).within(Duration.ofMinutes(15)),
                        Hold.unbroken(
                                new SignalRange(VEHICLE_SPEED, 70, 90),
                                Duration.ofMinutes(2),
                                SignalRange.atLeast(COOLANT, 75)));
        assertThat(plan.steps()).allSatisfy(step -> assertThat(step.faults()).containsExactly("P0420", "P0133"));
    }

    @Test
    void speeds_that_do_not_meet_stay_two_steps_of_one_drive() {
        Condition slow = Hold.unbroken(new SignalRange(VEHICLE_SPEED, 30, 60), Duration.ofSeconds(10));
        Condition narrow = Hold.unbroken(new SignalRange(VEHICLE_SPEED, 100.5, 120), Duration.ofSeconds(10));
        Condition wide = Hold.unbroken(new SignalRange(VEHICLE_SPEED, 100, 120), Duration.ofSeconds(10));
        assertThat(plans(need("a", CRUISE), need("b", slow)).get(0).steps()).hasSize(2);
        assertThat(plans(need("a", CRUISE), need("b", narrow)).get(0).steps()).hasSize(2);
        assertThat(plans(need("a", CRUISE), need("b", wide)).get(0).steps()).hasSize(1);
    }

    @Test
    void a_long_time_in_pieces_is_not_made_one_piece() {
        SignalRange range = new SignalRange(VEHICLE_SPEED, 70, 110);
        Condition pieces = Hold.cumulative(range, Duration.ofMinutes(10));
        Condition piece = Hold.unbroken(range, Duration.ofMinutes(1));
        Condition few = Hold.cumulative(range, Duration.ofMinutes(1));
        assertThat(Merge.of(pieces, piece)).isEmpty();
        assertThat(Merge.of(piece, pieces)).isEmpty();
        assertThat(Merge.of(few, piece)).contains(piece);
        assertThat(Merge.of(piece, few)).contains(piece);
        assertThat(Merge.of(pieces, few)).contains(pieces);
        assertThat(Merge.of(few, pieces)).contains(pieces);
    }

    @Test
    void only_like_is_merged_with_like() {
        Condition other = Hold.unbroken(SignalRange.atLeast(ENGINE_SPEED, 1_000), Duration.ofMinutes(1));
        Condition cold = Hold.unbroken(
                new SignalRange(VEHICLE_SPEED, 70, 110), Duration.ofMinutes(1), SignalRange.atMost(COOLANT, 60));
        assertThat(Merge.of(CRUISE, other)).isEmpty();
        assertThat(Merge.of(CRUISE, cold)).isEmpty();
        assertThat(Merge.of(CRUISE, IDLE)).isEmpty();
        assertThat(Merge.of(WARM_UP, Reach.rise(COOLANT, 20))).isEmpty();
        assertThat(Merge.of(WARM_UP, Reach.value(INTAKE_AIR, 20))).isEmpty();
        assertThat(Merge.of(FUEL, new AtStart(WARM))).isEmpty();
        assertThat(Merge.of(CRUISE, CRUISE)).contains(CRUISE);
        Condition loose = new StartDifference(COOLANT, INTAKE_AIR, 12);
        Condition tight = new StartDifference(COOLANT, INTAKE_AIR, 6);
        assertThat(Merge.of(loose, tight)).contains(tight);
        assertThat(Merge.of(tight, loose)).contains(tight);
        assertThat(Merge.of(tight, new StartDifference(INTAKE_AIR, COOLANT, 6))).isEmpty();
        assertThat(Merge.of(tight, new StartDifference(COOLANT, AMBIENT, 6))).isEmpty();
        assertThat(Merge.of(tight, new StartDifference(AMBIENT, INTAKE_AIR, 6))).isEmpty();
        assertThat(Merge.of(new Soak(Duration.ofHours(6)), SOAK)).contains(SOAK);
        assertThat(Merge.of(FUEL, loose)).isEmpty();
    }

    @Test
    void merged_times_to_reach_are_the_harder_ones() {
        SignalRange speed = new SignalRange(ENGINE_SPEED, 2_000, 2_500);
        Reach one = new Reach(
                COOLANT, 70, false, Optional.of(Duration.ofMinutes(9)), Duration.ofSeconds(20), List.of(speed));
        Reach two = new Reach(
                COOLANT, 80, false, Optional.of(Duration.ofMinutes(8)), Duration.ofSeconds(10), List.of(WARM));
        Reach merged = new Reach(
                COOLANT, 80, false, Optional.of(Duration.ofMinutes(8)), Duration.ofSeconds(10), List.of(speed, WARM));
        assertThat(Merge.of(one, two)).contains(merged);
        assertThat(Merge.of(two, one).map(both -> words(both.said())))
                .contains(
                        "coolant temperature of 80 °C within 8 min, with coolant temperature at least 70 °C and engine speed"
                                + " 2000 to 2500 rpm");
        Reach other = new Reach(
                COOLANT, 80, false, Optional.empty(), Duration.ZERO, List.of(SignalRange.atMost(ENGINE_SPEED, 900)));
        assertThat(Merge.of(one, other)).isEmpty();
    }

    @Test
    void faults_whose_starts_exclude_each_other_get_drives_of_their_own() {
        NextDrive.Need evap = need("P0442", SOAK, FUEL, new AtStart(new SignalRange(COOLANT, 7, 29)));
        NextDrive.Need hot = need("P0128", new AtStart(WARM), WARM_IDLE);
        NextDrive.Need full = need("P0455", new AtStart(SignalRange.atLeast(FUEL_LEVEL, 90)), CRUISE);
        List<DrivePlan> plans = plans(evap, hot, full);
        assertThat(plans).hasSize(2);
        assertThat(plans.get(0).apartBecause()).isEmpty();
        assertThat(words(plans.get(0).lines().get(0))).startsWith("Before the drive");
        assertThat(plans.get(1).faults()).containsExactly("P0128", "P0455");
        assertThat(words(plans.get(1).lines().get(0)))
                .isEqualTo(
                        "A drive of its own: P0442 needs coolant temperature 7 to 29 °C, P0128 needs coolant temperature at"
                                + " least 70 °C.");
    }

    @Test
    void a_soak_and_a_hot_start_exclude_each_other() {
        NextDrive.Need hot = need("hot", new AtStart(SignalRange.atLeast(COOLANT, 60)));
        String reason = "cold needs a start after hours with the engine off, hot a start with a hot engine";
        NextDrive.Need six = need("cold", new Soak(Duration.ofHours(6)));
        assertThat(plans(six, hot))
                .extracting(plan -> plan.apartBecause().map(English::words).orElse(""))
                .containsExactly("", reason);
        assertThat(plans(hot, six))
                .extracting(plan -> plan.apartBecause().map(English::words).orElse(""))
                .containsExactly("", reason);
        assertThat(plans(need("cold", new Soak(Duration.ofMinutes(359))), hot)).hasSize(1);
        assertThat(plans(six, need("luke", new AtStart(SignalRange.atLeast(COOLANT, 59)))))
                .hasSize(1);
        assertThat(plans(six, need("air", new AtStart(SignalRange.atLeast(INTAKE_AIR, 60)))))
                .hasSize(1);
    }

    @Test
    void surroundings_that_exclude_each_other_need_two_drives_but_speeds_do_not() {
        Condition winter = Hold.unbroken(
                new SignalRange(VEHICLE_SPEED, 70, 110), Duration.ofMinutes(1), SignalRange.atMost(AMBIENT, 0));
        Condition summer = Hold.unbroken(
                new SignalRange(VEHICLE_SPEED, 70, 110), Duration.ofMinutes(1), SignalRange.atLeast(AMBIENT, 20));
        assertThat(plans(need("a", winter), need("b", summer))).hasSize(2);
        Condition calm = Hold.unbroken(
                new SignalRange(VEHICLE_SPEED, 70, 110),
                Duration.ofMinutes(1),
                SignalRange.atMost(ENGINE_SPEED, 2_000));
        Condition brisk = Hold.unbroken(
                new SignalRange(VEHICLE_SPEED, 70, 110),
                Duration.ofMinutes(1),
                SignalRange.atLeast(ENGINE_SPEED, 3_000));
        assertThat(plans(need("a", calm), need("b", brisk))).hasSize(1);
    }

    @Test
    void cautions_follow_what_is_to_be_done() {
        DrivePlan cruise = plans(need("a", CRUISE)).get(0);
        assertThat(cruise.cautions()).hasSize(7).anyMatch(c -> words(c).contains("Traffic law"));
        for (Condition condition : List.of(IDLE, WARM_IDLE, WARM_UP)) {
            assertThat(plans(need("a", condition)).get(0).cautions())
                    .hasSize(8)
                    .anyMatch(c -> words(c).contains("carbon monoxide"));
        }
        assertThat(plans(need("a", COAST)).get(0).cautions())
                .hasSize(8)
                .anyMatch(c -> words(c).startsWith("Coasting down"));
    }

    @Test
    void the_phase_of_a_hold_comes_from_what_is_held() {
        SignalRange cruise = new SignalRange(VEHICLE_SPEED, 30, 60);
        Duration time = Duration.ofSeconds(10);
        assertThat(Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 5), time).phase())
                .isEqualTo(Phase.IDLE);
        assertThat(Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 5.1), time).phase())
                .isEqualTo(Phase.CRUISE);
        assertThat(Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 5), time, SignalRange.atLeast(COOLANT, 60))
                        .phase())
                .isEqualTo(Phase.WARM_IDLE);
        assertThat(Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 5), time, SignalRange.atLeast(COOLANT, 59))
                        .phase())
                .isEqualTo(Phase.IDLE);
        assertThat(Hold.unbroken(SignalRange.atMost(VEHICLE_SPEED, 5), time, SignalRange.atLeast(INTAKE_AIR, 60))
                        .phase())
                .isEqualTo(Phase.IDLE);
        assertThat(Hold.unbroken(cruise, time, SignalRange.atMost(THROTTLE, 25)).phase())
                .isEqualTo(Phase.COAST);
        assertThat(Hold.unbroken(cruise, time, SignalRange.atMost(THROTTLE, 26)).phase())
                .isEqualTo(Phase.CRUISE);
        assertThat(Hold.unbroken(cruise, time, SignalRange.atMost(FUEL_LEVEL, 25))
                        .phase())
                .isEqualTo(Phase.CRUISE);
        assertThat(Hold.unbroken(SignalRange.atMost(PEDAL, 15), time).phase()).isEqualTo(Phase.COAST);
        assertThat(Hold.unbroken(SignalRange.atMost(ENGINE_SPEED, 4), time).phase())
                .isEqualTo(Phase.CRUISE);
        assertThat(new AtStart(WARM).isBeforeDriving()).isTrue();
        assertThat(SOAK.isBeforeDriving()).isTrue();
        assertThat(WARM_UP.isBeforeDriving()).isFalse();
        assertThat(words(new StartDifference(COOLANT, AMBIENT, 6).toDo()))
                .isEqualTo(
                        "Start with a cold engine: coolant temperature at most 6 K above ambient temperature at the start.");
    }

    private static DriveSummary drive(Map<DriveQuantity, Double> values) {
        return new DriveSummary(values, List.of(), Optional.empty());
    }

    private static DriveSummary cruising(double seconds) {
        return drive(Map.of(DriveQuantity.FAST_TIME, seconds, DriveQuantity.PEAK_COOLANT, 85.0));
    }

    @Test
    void past_drives_are_counted_with_the_honesty_of_small_numbers() {
        DrivePlan plan = plans(need("a", WARM_UP, CRUISE)).get(0);
        List<DriveSummary> past = new ArrayList<>();
        for (int i = 0; i < 14; i++) {
            past.add(cruising(i < 3 ? 60 : 59.9));
        }
        // Wilson score interval, 95 %, 3 of 14: 7.57 % to 47.59 %, from the published formula
        assertThat(words(plan.frequency(past).said()))
                .isEqualTo(
                        "3 of this car's last 14 recorded drives would have met it. With so few drives, anything from 8 % to"
                                + " 48 % of its drives is possible.");
        past.add(DriveSummary.UNKNOWN);
        assertThat(plan.frequency(past)).isEqualTo(new Frequency(3, 14, 1, List.of()));
        assertThat(words(plan.frequency(past).said())).endsWith(" 1 more could not be judged.");
    }

    @Test
    void few_drives_and_none_say_so() {
        assertThat(words(new Frequency(1, 4, 0, List.of()).said()))
                .isEqualTo("1 of this car's last 4 recorded drives would have met it."
                        + " That is too few to say how often such a drive happens.");
        assertThat(words(new Frequency(0, 0, 2, List.of()).said()))
                .isEqualTo(
                        "No recorded drive of this car tells how often such a drive happens. 2 more could not be judged.");
        // Wilson, 0 of 10: z² / (n + z²) = 3.8415 / 13.8415 = 27.75 %
        assertThat(words(new Frequency(0, 10, 0, List.of()).said()))
                .isEqualTo("0 of this car's last 10 recorded drives would have met it."
                        + " With so few drives it may still be up to 28 % of them.");
        assertThat(words(new Frequency(5, 5, 0, List.of()).said())).contains("anything from 57 % to 100 %");
        assertThat(words(new Frequency(50, 100, 0, List.of()).said()))
                .isEqualTo("50 of this car's last 100 recorded drives would have met it.");
        assertThat(words(new Frequency(50, 99, 0, List.of()).said())).contains("anything from 41 % to 60 %");
    }

    @Test
    void what_a_summary_cannot_tell_is_left_out_and_named() {
        DrivePlan plan = plans(need("a", CRUISE, COAST)).get(0);
        assertThat(words(plan.frequency(List.of(cruising(100))).said()))
                .isEqualTo(
                        "1 of this car's last 1 recorded drives would have met it. That is too few to say how often such a"
                                + " drive happens. Not counted, because a summary cannot tell: vehicle speed 30 to 110 km/h for 10 s"
                                + " in total, with accelerator pedal at most 15 %.");
        assertThat(plans(need("a", COAST)).get(0).frequency(List.of(cruising(100))))
                .isEqualTo(new Frequency(0, 0, 1, List.of(COAST.said())));
    }

    @Test
    void each_kind_of_condition_is_held_against_a_summary() {
        DriveSummary drive = drive(Map.of(
                DriveQuantity.SOAK, 8.0,
                DriveQuantity.FUEL_LEVEL, 10.0,
                DriveQuantity.START_COOLANT, 20.0,
                DriveQuantity.PEAK_COOLANT, 90.0,
                DriveQuantity.AMBIENT, 15.0,
                DriveQuantity.LONGEST_IDLE, 30.0));
        assertThat(SOAK.inSummary(drive).map(Finding::held)).contains(Finding.Held.YES);
        assertThat(FUEL.inSummary(drive).map(Finding::held)).contains(Finding.Held.NO);
        assertThat(new AtStart(SignalRange.atMost(PEDAL, 5)).inSummary(drive)).isEmpty();
        assertThat(IDLE.inSummary(drive).map(found -> words(found.reason())))
                .contains("longest unbroken idle 30 s, 30 s needed");
        assertThat(WARM_IDLE.inSummary(drive).map(Finding::held)).contains(Finding.Held.NO);
        assertThat(CRUISE.inSummary(drive).map(Finding::held)).contains(Finding.Held.UNKNOWN);
        assertThat(Reach.value(COOLANT, 90).inSummary(drive).map(Finding::held)).contains(Finding.Held.YES);
        assertThat(Reach.value(COOLANT, 91).inSummary(drive).map(found -> words(found.reason())))
                .contains("coolant temperature came to 90 °C, 91 °C needed");
        assertThat(Reach.rise(COOLANT, 70).inSummary(drive).map(Finding::held)).contains(Finding.Held.YES);
        assertThat(Reach.rise(COOLANT, 71).inSummary(drive).map(Finding::held)).contains(Finding.Held.NO);
        assertThat(Reach.rise(COOLANT, 71)
                        .inSummary(drive(Map.of(DriveQuantity.PEAK_COOLANT, 90.0)))
                        .map(Finding::held))
                .contains(Finding.Held.UNKNOWN);
        assertThat(Reach.value(COOLANT, 71).inSummary(DriveSummary.UNKNOWN).map(Finding::held))
                .contains(Finding.Held.UNKNOWN);
        assertThat(Reach.value(INTAKE_AIR, 71).inSummary(drive)).isEmpty();
        assertThat(new StartDifference(COOLANT, AMBIENT, 5).inSummary(drive).map(Finding::held))
                .contains(Finding.Held.YES);
        assertThat(new StartDifference(COOLANT, AMBIENT, 4).inSummary(drive).map(Finding::held))
                .contains(Finding.Held.UNKNOWN);
        assertThat(new StartDifference(COOLANT, AMBIENT, 4)
                        .inSummary(DriveSummary.UNKNOWN)
                        .map(Finding::held))
                .contains(Finding.Held.UNKNOWN);
        assertThat(new StartDifference(COOLANT, INTAKE_AIR, 4).inSummary(drive)).isEmpty();
        assertThat(new StartDifference(AMBIENT, COOLANT, 4).inSummary(drive)).isEmpty();
        assertThat(Hold.unbroken(new SignalRange(VEHICLE_SPEED, 1, 4), Duration.ofSeconds(1))
                        .inSummary(drive))
                .isEmpty();
        assertThat(Hold.unbroken(new SignalRange(VEHICLE_SPEED, 40, 99), Duration.ofSeconds(1))
                        .inSummary(drive))
                .isEmpty();
        assertThat(Hold.unbroken(SignalRange.atLeast(ENGINE_SPEED, 400), Duration.ofSeconds(1))
                        .inSummary(drive))
                .isEmpty();
    }
}
