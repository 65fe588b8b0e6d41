package dev.stayfixed.jobs;

import dev.stayfixed.drive.OperatingPoint;
import dev.stayfixed.obd.Ignition;
import dev.stayfixed.obd.MonitorGroup;
import dev.stayfixed.obd.TroubleCode;
import dev.stayfixed.verification.EvidenceGrade;
import dev.stayfixed.verification.RecordedConditions;
import dev.stayfixed.verification.RepairedFault;
import dev.stayfixed.verification.Trips;
import dev.stayfixed.verification.VerificationState;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.ManyToOne;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.TenantId;
import org.jspecify.annotations.Nullable;

/** The row of a fault, with its standing as it was last computed. */
@Entity
@Table(name = "fault")
class StoredFault {

    @Id
    @GeneratedValue(strategy = GenerationType.UUID)
    private @Nullable UUID id;

    @TenantId
    @Column(name = "shop_id")
    private @Nullable UUID shopId;

    @ManyToOne(fetch = FetchType.LAZY)
    private StoredJob job;

    @Column(name = "position")
    private int position;

    private String code;

    @Enumerated(EnumType.STRING)
    private MonitorGroup monitorGroup;

    @Enumerated(EnumType.STRING)
    private Trips trips;

    private int requiredPasses;

    @Enumerated(EnumType.STRING)
    private EvidenceGrade weakestEvidence;

    private @Nullable Double freezeSpeed;
    private @Nullable Double freezeLoad;
    private @Nullable Double freezeCoolant;

    @ElementCollection
    @CollectionTable(name = "fault_condition", joinColumns = @JoinColumn(name = "fault_id"))
    @OrderColumn(name = "position")
    private List<StoredCondition> conditions = new ArrayList<>();

    private @Nullable String conditionsKey;

    @Enumerated(EnumType.STRING)
    private RecordedConditions.@Nullable Origin conditionsOrigin;

    private @Nullable String conditionsSource;
    private @Nullable String conditionsText;

    @Embedded
    private StoredStanding standing;

    /** Read by the query for the list of open jobs. */
    @SuppressWarnings("UnusedVariable")
    private boolean standingContradictory;

    protected StoredFault() {}

    StoredFault(StoredJob job, int position, RepairedFault terms) {
        this.job = job;
        this.position = position;
        this.code = terms.code().text();
        agree(terms);
        this.standing = StoredStanding.of(Standing.of(new VerificationState.AwaitingRepair(), terms.requiredPasses()));
    }

    /** What has to be proven, and how; the code itself stays. */
    final void agree(RepairedFault terms) {
        monitorGroup = terms.group();
        trips = terms.trips();
        requiredPasses = terms.requiredPasses();
        weakestEvidence = terms.weakestAccepted();
        freezeSpeed = terms.freezeFrame().map(OperatingPoint::engineSpeed).orElse(null);
        freezeLoad = terms.freezeFrame().map(OperatingPoint::load).orElse(null);
        freezeCoolant = terms.freezeFrame().map(OperatingPoint::coolant).orElse(null);
        conditions.clear();
        terms.enablingConditions().forEach(c -> conditions.add(StoredCondition.of(c)));
    }

    /** What recorded signals are held against from now on. */
    void agree(AgreedConditions agreed) {
        conditionsKey = AgreedConditions.key(agreed.set());
        conditionsOrigin = agreed.origin();
        conditionsSource = agreed.source();
        conditionsText = AgreedConditions.text(agreed.set());
    }

    FaultConditions conditions() {
        Optional<AgreedConditions> agreed = conditionsText == null || conditionsOrigin == null
                ? Optional.empty()
                : Optional.of(new AgreedConditions(
                        AgreedConditions.read(code, conditionsText),
                        conditionsOrigin,
                        conditionsSource == null ? "" : conditionsSource));
        return new FaultConditions(job.id(), job.version(), id(), code(), monitorGroup, agreed);
    }

    /** Records where it stands; says whether that is new. */
    boolean stand(Standing now) {
        boolean changed = !standing().equals(now);
        if (changed) {
            standing = StoredStanding.of(now);
        }
        return changed;
    }

    void markContradictory(boolean contradictory) {
        standingContradictory = contradictory;
    }

    UUID id() {
        return Objects.requireNonNull(id);
    }

    StoredJob job() {
        return job;
    }

    TroubleCode code() {
        return TroubleCode.parse(code);
    }

    Standing standing() {
        return standing.facts(requiredPasses);
    }

    RepairedFault terms(Ignition ignition) {
        RepairedFault terms = new RepairedFault(
                code(),
                ignition,
                monitorGroup,
                trips,
                requiredPasses,
                weakestEvidence,
                conditions.stream().map(StoredCondition::facts).toList(),
                freezeSpeed == null || freezeLoad == null || freezeCoolant == null
                        ? Optional.empty()
                        : Optional.of(new OperatingPoint(freezeSpeed, freezeLoad, freezeCoolant)));
        return conditionsKey == null || conditionsOrigin == null
                ? terms
                : terms.with(new RecordedConditions(conditionsKey, conditionsOrigin));
    }

    Fault facts(Ignition ignition) {
        return new Fault(id(), terms(ignition), standing());
    }
}
