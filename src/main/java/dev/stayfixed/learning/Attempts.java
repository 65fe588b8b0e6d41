package dev.stayfixed.learning;

import dev.stayfixed.jobs.Jobs;
import dev.stayfixed.judging.VehicleJudged;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.storage.StoredTime;
import dev.stayfixed.verification.StateName;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.SqlParameterValue;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Keeps how each repair attempt went: a copy of the verdicts, and what is counted of it. */
@Component
class Attempts {

    private static final List<String> VALUES = List.of(
            "shop_id",
            "vehicle_id",
            "job_id",
            "position",
            "code",
            "monitor_group",
            "repair",
            "performed_at",
            "state",
            "proven_at",
            "drives_to_proof",
            "failed_at",
            "followed_until",
            "km_followed",
            "km_to_failure",
            "words",
            "proof_tenths",
            "held_tenths",
            "held_km",
            "came_back");
    private static final String INSERT = "insert into attempt_outcome (%s, repair_id, fault_id) values (%s?, ?)"
            .formatted(String.join(", ", VALUES), "?, ".repeat(VALUES.size()));
    private static final String UPDATE =
            "update attempt_outcome set %s = ? where repair_id = ? and fault_id = ? and shop_id = ?"
                    .formatted(String.join(" = ?, ", VALUES));

    private final JdbcClient jdbc;
    private final CurrentShop shop;
    private final Jobs jobs;
    private final StoredLessons lessons;

    Attempts(JdbcClient jdbc, CurrentShop shop, Jobs jobs, StoredLessons lessons) {
        this.jdbc = jdbc;
        this.shop = shop;
        this.jobs = jobs;
        this.lessons = lessons;
    }

    /** Keeps how each attempt went, and writes only what has changed; gives all attempts of the vehicle, in no order. */
    List<Attempt> keep(VehicleJudged judged) {
        Outcomes outcomes = new Outcomes(judged.vehicleId(), judged.drives(), jobs.repairsOf(jobsOf(judged)));
        List<Attempt> attempts =
                judged.verdicts().stream().flatMap(v -> outcomes.of(v).stream()).toList();
        Map<Key, Kept> before = byKey(keptOf(judged.vehicleId()).stream());
        Set<UUID> back = cameBack(before.values(), attempts);
        Map<Key, Kept> now = byKey(attempts.stream().map(a -> new Kept(a, Counted.of(a, back.contains(a.faultId())))));
        if (!before.equals(now)) {
            before.keySet().stream().filter(key -> !now.containsKey(key)).forEach(this::delete);
            now.forEach((key, kept) -> write(key, kept, Optional.ofNullable(before.get(key))));
            lessons.add(Lesson.change(lessonsOf(before.values()).stream(), lessonsOf(now.values()).stream()));
        }
        return attempts;
    }

    private static Set<UUID> jobsOf(VehicleJudged judged) {
        return judged.verdicts().stream().map(v -> v.faultCase().jobId()).collect(Collectors.toSet());
    }

    /** Which faults came back: as it is kept with their attempts, and for those without any as the comebacks tell it. */
    private Set<UUID> cameBack(Collection<Kept> before, List<Attempt> attempts) {
        Set<UUID> back = before.stream()
                .filter(kept -> kept.counted().cameBack())
                .map(kept -> kept.attempt().faultId())
                .collect(Collectors.toCollection(HashSet::new));
        Set<UUID> others = attempts.stream().map(Attempt::faultId).collect(Collectors.toCollection(HashSet::new));
        before.forEach(kept -> others.remove(kept.attempt().faultId()));
        if (!others.isEmpty()) {
            back.addAll(jdbc.sql(
                            "select distinct earlier_fault_id from comeback where shop_id = :shop and earlier_fault_id in (:faults)")
                    .param("shop", shop.id())
                    .param("faults", others)
                    .query(UUID.class)
                    .list());
        }
        return back;
    }

    private record Key(UUID repairId, UUID faultId) {

        static Key of(Kept kept) {
            return new Key(kept.attempt().repairId(), kept.attempt().faultId());
        }
    }

    private static Map<Key, Kept> byKey(Stream<Kept> kept) {
        return kept.collect(Collectors.toMap(Key::of, Function.identity()));
    }

    /** An attempt and what of it is counted. */
    private record Kept(Attempt attempt, Counted counted) {}

    private static List<Lesson> lessonsOf(Collection<Kept> kept) {
        return kept.stream().flatMap(k -> k.counted().lessons().stream()).toList();
    }

    private void delete(Key key) {
        jdbc.sql("delete from attempt_outcome where shop_id = ? and repair_id = ? and fault_id = ?")
                .params(shop.id(), key.repairId(), key.faultId())
                .update();
    }

    private void write(Key key, Kept kept, Optional<Kept> before) {
        if (before.filter(kept::equals).isPresent()) {
            return;
        }
        Attempt a = kept.attempt();
        Counted c = kept.counted();
        JdbcClient.StatementSpec row = jdbc.sql(before.isPresent() ? UPDATE : INSERT)
                .params(shop.id(), a.vehicleId(), a.jobId(), a.position(), a.code())
                .params(
                        a.group(),
                        a.repair(),
                        StoredTime.of(a.performedAt()),
                        a.state().name())
                .param(time(a.provenAt()))
                .param(whole(a.drivesToProof()))
                .param(time(a.failedAt()))
                .param(StoredTime.of(a.followedUntil()))
                .param(a.kmFollowed())
                .param(new SqlParameterValue(
                        Types.DOUBLE,
                        a.kmToFailure().isPresent() ? a.kmToFailure().getAsDouble() : null))
                .param(c.words())
                .param(whole(c.tenthsToProof()))
                .params(c.tenthsHeld(), c.kmHeld(), c.cameBack())
                .params(key.repairId(), key.faultId());
        (before.isPresent() ? row.param(shop.id()) : row).update();
    }

    /** Counts anew which faults of a vehicle came back; called when that may have changed. */
    void countComebacks(UUID vehicleId) {
        Set<UUID> back =
                jdbc.sql("""
                        select distinct c.earlier_fault_id from comeback c join attempt_outcome a on a.fault_id = c.earlier_fault_id
                        where a.shop_id = ? and a.vehicle_id = ?""").params(shop.id(), vehicleId).query(UUID.class).set();
        List<Kept> moved = keptOf(vehicleId).stream()
                .filter(kept -> kept.counted().cameBack()
                        != back.contains(kept.attempt().faultId()))
                .toList();
        moved.stream()
                .map(kept -> kept.attempt().faultId())
                .distinct()
                .forEach(fault -> jdbc.sql(
                                "update attempt_outcome set came_back = ? where shop_id = ? and fault_id = ? and vehicle_id = ?")
                        .params(back.contains(fault), shop.id(), fault, vehicleId)
                        .update());
        lessons.add(Lesson.change(
                lessonsOf(moved).stream(),
                moved.stream().map(Kept::counted).flatMap(c -> c.with(!c.cameBack()).lessons().stream())));
    }

    /** Of one vehicle, the earliest first. */
    List<Attempt> ofVehicle(UUID vehicleId) {
        return keptOf(vehicleId).stream().map(Kept::attempt).toList();
    }

    private List<Kept> keptOf(UUID vehicleId) {
        return jdbc.sql("""
                        select * from attempt_outcome where shop_id = ? and vehicle_id = ?
                        order by performed_at, repair_id, fault_id""").params(shop.id(), vehicleId).query(Attempts::kept).list();
    }

    private static SqlParameterValue time(Optional<Instant> instant) {
        return new SqlParameterValue(
                Types.TIMESTAMP_WITH_TIMEZONE, instant.map(StoredTime::of).orElse(null));
    }

    private static SqlParameterValue whole(OptionalInt number) {
        return new SqlParameterValue(Types.INTEGER, number.isPresent() ? number.getAsInt() : null);
    }

    private static OptionalInt whole(ResultSet row, String column) throws SQLException {
        @Nullable Integer number = row.getObject(column, Integer.class);
        return number == null ? OptionalInt.empty() : OptionalInt.of(number);
    }

    private static Kept kept(ResultSet row, int number) throws SQLException {
        Attempt attempt = attempt(row);
        return new Kept(
                attempt,
                new Counted(
                        attempt.position() == 0,
                        attempt.code(),
                        row.getString("words"),
                        attempt.state() == StateName.RECURRED,
                        whole(row, "proof_tenths"),
                        attempt.drivesToProof(),
                        attempt.failedAt().isPresent(),
                        row.getInt("held_tenths"),
                        row.getInt("held_km"),
                        row.getBoolean("came_back")));
    }

    private static Attempt attempt(ResultSet row) throws SQLException {
        @Nullable Double km = row.getObject("km_to_failure", Double.class);
        return new Attempt(
                row.getObject("repair_id", UUID.class),
                row.getObject("fault_id", UUID.class),
                row.getObject("vehicle_id", UUID.class),
                row.getObject("job_id", UUID.class),
                row.getInt("position"),
                row.getString("code"),
                row.getString("monitor_group"),
                row.getString("repair"),
                StoredTime.in(row, "performed_at"),
                StateName.valueOf(row.getString("state")),
                StoredTime.ifAny(row, "proven_at"),
                whole(row, "drives_to_proof"),
                StoredTime.ifAny(row, "failed_at"),
                StoredTime.in(row, "followed_until"),
                row.getDouble("km_followed"),
                km == null ? OptionalDouble.empty() : OptionalDouble.of(km));
    }
}
