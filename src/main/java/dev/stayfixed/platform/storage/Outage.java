package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.problem.FullDisk;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.io.IOException;
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
public final class Outage {

    private static final Logger LOG = LoggerFactory.getLogger(Outage.class);

    /**
     * Of PostgreSQL: shut down by an administrator, after a crash, starting up, its session idle too long; too many connections. Of H2:
     * its file cannot be read or written, is damaged, or was closed for such a reason.
     */
    private static final Set<String> AWAY =
            Set.of("57P01", "57P02", "57P03", "57P05", "53300", "90028", "90031", "90030", "90098", "90121");

    private Outage() {}

    /**
     * What to throw instead of a failure: a refusal where the database is away, else the failure itself. Whether a commit that was cut
     * off took effect nobody knows, so the refusal does not say that nothing was stored.
     */
    public static RuntimeException explained(RuntimeException failure) {
        if (failure instanceof Refused) {
            return failure;
        }
        if (FullDisk.isBehind(failure) || causes(failure).anyMatch(Outage::isFull)) {
            LOG.error("the disk of the database is full", failure);
            return full(failure);
        }
        return causes(failure)
                .dropWhile(cause -> !(cause instanceof SQLException))
                .filter(Outage::isAway)
                .findFirst()
                .map(cause -> away(failure, cause))
                .orElse(failure);
    }

    private static RuntimeException full(RuntimeException failure) {
        return new Refused(
                ProblemType.STORAGE_FULL,
                "the disk of the database takes nothing more; free some space on it and repeat the request, nothing has to be started"
                        + " anew",
                failure);
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
                || cause instanceof IOException
                || (cause instanceof SQLException sql && sql.getSQLState() != null && isAway(sql.getSQLState()));
    }

    private static boolean isAway(String state) {
        return state.startsWith("08") || AWAY.contains(state);
    }

    /** PostgreSQL has a code for it; H2 passes on what the operating system says. */
    private static boolean isFull(Throwable cause) {
        return cause instanceof SQLException sql && "53100".equals(sql.getSQLState());
    }

    private static Stream<Throwable> causes(Throwable failure) {
        return Stream.iterate(failure, Objects::nonNull, Throwable::getCause).limit(50);
    }
}
