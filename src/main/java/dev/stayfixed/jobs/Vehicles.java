package dev.stayfixed.jobs;

import dev.stayfixed.obd.Vin;
import dev.stayfixed.platform.IfMatch;
import dev.stayfixed.platform.Page;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;

/** The vehicles that the shop works on. */
@Service
public class Vehicles {

    private final StoredVehicles vehicles;
    private final StoredJobs jobs;
    private final JobParts jobParts;
    private final VehicleParts parts;
    private final Durably durably;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    Vehicles(
            StoredVehicles vehicles,
            StoredJobs jobs,
            JobParts jobParts,
            VehicleParts parts,
            Durably durably,
            ApplicationEventPublisher events,
            Clock clock) {
        this.vehicles = vehicles;
        this.jobs = jobs;
        this.jobParts = jobParts;
        this.parts = parts;
        this.durably = durably;
        this.events = events;
        this.clock = clock;
    }

    /**
     * Takes a vehicle into the shop's list.
     *
     * @throws Refused when the shop already has one with this vehicle identification number
     */
    public Vehicle register(Vehicle.Details details) {
        return durably.write(() -> {
            refuseSecond(details, null);
            StoredVehicle vehicle = vehicles.saveAndFlush(new StoredVehicle(details, clock.instant()));
            parts.file(vehicle.id(), details);
            return vehicle.facts();
        });
    }

    public Vehicle revise(UUID id, IfMatch ifMatch, Vehicle.Details details) {
        return durably.write(() -> {
            StoredVehicle vehicle = locked(id);
            ifMatch.check(vehicle.version());
            refuseSecond(details, id);
            vehicle.describe(details);
            vehicles.flush();
            parts.file(id, details);
            jobs.ofVehicle(id).forEach(job -> jobParts.file(job.facts(), details));
            events.publishEvent(new EvidenceChanged(id));
            return vehicle.facts();
        });
    }

    public Vehicle get(UUID id) {
        return durably.read(() -> vehicles.findById(id)
                .orElseThrow(() -> Refused.notFound("vehicle", id))
                .facts());
    }

    /** Several at once, by id; those that are not there are left out. */
    public Map<UUID, Vehicle> get(Set<UUID> ids) {
        return durably.read(() -> vehicles.findAllById(ids).stream()
                .map(StoredVehicle::facts)
                .collect(Collectors.toMap(Vehicle::id, Function.identity())));
    }

    /**
     * Vehicles whose description, plate or identification number contains a text.
     *
     * @param text null for all
     */
    public Page<Vehicle> search(@Nullable String text, Page.Request page) {
        return durably.read(() -> {
            List<UUID> ids = parts.page(text, page);
            Map<UUID, Vehicle> found = get(Set.copyOf(ids));
            return Page.of(
                    ids.stream()
                            .flatMap(id -> Optional.ofNullable(found.get(id)).stream())
                            .toList(),
                    page,
                    v -> new Page.Position(v.createdAt(), v.id()));
        });
    }

    /** The vehicle of the shop that has this number. */
    public Optional<Vehicle> withVin(Vin vin) {
        return durably.read(() -> vehicles.findByVin(vin.text()).map(StoredVehicle::facts));
    }

    /** Ids of all vehicles, oldest first. */
    public List<UUID> all() {
        return durably.read(vehicles::allIds);
    }

    /** Ids of those that another program has judged last, or none; oldest first. */
    public List<UUID> judgedByOthers(String program) {
        return durably.read(() -> vehicles.judgedByOthers(program));
    }

    /** Notes which program has judged a vehicle. Needs the transaction that holds it, and that keeps what was judged. */
    public void judgedBy(UUID id, String program) {
        held(id).judgedBy(program);
    }

    /** All vehicles are due at the next start, whoever has judged them. */
    public void judgeAgain() {
        durably.write(vehicles::forgetWhoJudged);
    }

    /** The vehicle, kept for the running transaction alone: nobody else writes anything that belongs to it meanwhile. */
    public Vehicle hold(UUID id) {
        return locked(id).facts();
    }

    /**
     * A name for the drives that count for the vehicle now: whenever they change it is another one, at whatever instance, and none comes
     * twice. Empty where they have not changed since such names are given.
     */
    public Optional<UUID> drives(UUID id) {
        return vehicles.findById(id).flatMap(StoredVehicle::drives);
    }

    /** Gives that name anew; whoever changes which drives count, or what one of them tells, has to call it in the same write, which holds the vehicle. */
    public UUID otherDrives(UUID id) {
        return held(id).otherDrives();
    }

    /** One that the running transaction has locked before. */
    private StoredVehicle held(UUID id) {
        return vehicles.findById(id).orElseThrow(() -> Refused.notFound("vehicle", id));
    }

    private StoredVehicle locked(UUID id) {
        return vehicles.lock(id).orElseThrow(() -> Refused.notFound("vehicle", id));
    }

    private void refuseSecond(Vehicle.Details details, @Nullable UUID self) {
        if (details.vin().isEmpty()) {
            return;
        }
        String vin = details.vin().get().text();
        durably.hold("vehicle number " + vin);
        vehicles.findByVin(vin).filter(other -> !other.id().equals(self)).ifPresent(other -> {
            throw new Refused(
                    ProblemType.VEHICLE_EXISTS,
                    "vin: found " + vin + ", which the vehicle " + other.id() + " already has; use that vehicle",
                    Map.of("existingId", other.id().toString()));
        });
    }
}
