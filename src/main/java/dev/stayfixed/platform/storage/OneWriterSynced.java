package dev.stayfixed.platform.storage;

import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;

/**
 * For H2. Concurrent writers can leave half a transaction after kill -9, so one writes at a time; and a commit is only in the page
 * cache until the file is synced, so the answer waits for a sync that began after the commit.
 */
final class OneWriterSynced extends Transactions {

    private final ReentrantLock writer = new ReentrantLock(true);
    private final SharedSync sync;

    /** @param sync forces the database file to the disk */
    OneWriterSynced(PlatformTransactionManager manager, JdbcClient jdbc, Runnable sync) {
        super(manager, jdbc);
        this.sync = new SharedSync(() -> alone(() -> {
            sync.run();
            return true;
        }));
    }

    @Override
    public <T> T write(Supplier<T> work) {
        if (writer.isHeldByCurrentThread()) {
            return super.write(work);
        }
        T result = alone(() -> super.write(work));
        sync.await();
        return result;
    }

    /** Who writes is alone. */
    @Override
    public void hold(String name) {}

    @Override
    public DataSource connections(DataSource dataSource) {
        return new OneWriterConnections(super.connections(dataSource), writer);
    }

    private <T> T alone(Supplier<T> work) {
        writer.lock();
        try {
            return work.get();
        } finally {
            writer.unlock();
        }
    }
}
