package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.sql.SQLException;
import java.sql.SQLNonTransientConnectionException;
import java.sql.SQLRecoverableException;
import java.sql.SQLTransientConnectionException;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Tells the failures of a database that is away from the mistakes of this service. */
final class Outage {

    private static final Logger LOG = LoggerFactory.getLogger(Outage.class);

    /** Of PostgreSQL: shut down by an administrator, after a crash, starting up, its session idle too long; too many connections. */
    private static final Set<String> AWAY = Set.of("57P01", "57P02", "57P03", "57P05", "53300");

    private Outage() {}

    /**
     * What to throw instead of a failure: a refusal where the database is away, else the failure itself. Whether a commit that was cut
     * off took effect nobody knows, so the refusal does not say that nothing was stored.
     */
    static RuntimeException explained(RuntimeException failure) {
        return failure instanceof Refused
                ? failure
                : causes(failure)
                        .filter(Outage::isAway)
                        .findFirst()
                        .map(cause -> away(failure, cause))
                        .orElse(failure);
    }

    private static RuntimeException away(RuntimeException failure, Throwable cause) {
        LOG.warn("the database is away: {}", cause.getMessage());
        return new Refused(
                ProblemType.DATABASE_AWAY,
                "the database does not answer now; repeat the request, which is taken once however often it is sent with the same"
                        + " Idempotency-Key",
                failure);
    }

    private static boolean isAway(Throwable cause) {
        return cause instanceof SQLTransientConnectionException
                || cause instanceof SQLNonTransientConnectionException
                || cause instanceof SQLRecoverableException
                || (cause instanceof SQLException sql && sql.getSQLState() != null && isAway(sql.getSQLState()));
    }

    private static boolean isAway(String state) {
        return state.startsWith("08") || AWAY.contains(state);
    }

    private static Stream<Throwable> causes(Throwable failure) {
        return Stream.iterate(failure, Objects::nonNull, Throwable::getCause).limit(50);
    }
}
