package dev.stayfixed.platform.storage;

import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionCallback;
import org.springframework.transaction.support.TransactionSynchronizationManager;
import org.springframework.transaction.support.TransactionTemplate;

/** Plain transactions: enough where a commit is durable once it returns, as on PostgreSQL with synchronous_commit on. */
class Transactions implements Durably {

    private static final Logger LOG = LoggerFactory.getLogger(Transactions.class);
    private static final int TRIES = 5;

    private final TransactionTemplate writing;
    private final TransactionTemplate reading;
    private final JdbcClient jdbc;

    Transactions(PlatformTransactionManager manager, JdbcClient jdbc) {
        writing = new TransactionTemplate(manager);
        reading = new TransactionTemplate(manager);
        reading.setReadOnly(true);
        this.jdbc = jdbc;
    }

    @Override
    public <T> T write(Supplier<T> work) {
        if (TransactionSynchronizationManager.isActualTransactionActive()) {
            return once(work);
        }
        for (int tries = 1; tries < TRIES; tries++) {
            try {
                return once(work);
            } catch (ConcurrencyFailureException | DuplicateKeyException othersWereFaster) {
                LOG.debug("try {} is undone", tries, othersWereFaster);
            }
        }
        try {
            return once(work);
        } catch (ConcurrencyFailureException othersWereFasterAgain) {
            throw new Refused(
                    ProblemType.BUSY,
                    "others changed the same at the same time, " + TRIES
                            + " times in a row; nothing of this request was stored",
                    othersWereFasterAgain);
        }
    }

    private <T> T once(Supplier<T> work) {
        return in(writing, status -> {
            T result = work.get();
            status.flush();
            return result;
        });
    }

    @Override
    public void derive(Runnable work) {
        write(() -> {
            jdbc.sql("set local synchronous_commit = off").update();
            work.run();
        });
    }

    @Override
    public void hold(String name) {
        jdbc.sql("select pg_advisory_xact_lock(hashtextextended(?, 0))")
                .param(name)
                .query(rows -> {});
    }

    @Override
    public void share(String name) {
        jdbc.sql("select pg_advisory_xact_lock_shared(hashtextextended(?, 0))")
                .param(name)
                .query(rows -> {});
    }

    @Override
    public boolean holdIfFree(String name) {
        return jdbc.sql("select pg_try_advisory_xact_lock(hashtextextended(?, 0))")
                .param(name)
                .query(Boolean.class)
                .single();
    }

    @Override
    public <T> T read(Supplier<T> work) {
        return in(reading, status -> work.get());
    }

    @Override
    public <T> T readThrough(String door, Supplier<T> work) {
        return read(() -> {
            jdbc.sql("select set_config('" + RowFences.DOOR + "', ?, true)")
                    .param(door)
                    .query(rows -> {});
            return work.get();
        });
    }

    /** What to throw instead of a failure. */
    RuntimeException explained(RuntimeException failure) {
        return Outage.explained(failure);
    }

    private <T> T in(TransactionTemplate transaction, TransactionCallback<T> work) {
        AtomicReference<@Nullable RuntimeException> why = new AtomicReference<>();
        @Nullable T result;
        try {
            result = transaction.execute(status -> {
                try {
                    return work.doInTransaction(status);
                } catch (RuntimeException e) {
                    why.set(e);
                    throw e;
                }
            });
        } catch (RuntimeException e) {
            // Over a dead connection the rollback fails, too; that it was dead says only what came before.
            RuntimeException first = why.get();
            throw explained(first == null ? e : first);
        }
        if (result == null) {
            throw new IllegalStateException("a transaction must return something");
        }
        return result;
    }
}
