package dev.stayfixed.platform.storage;

import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.TransactionAwareDataSourceProxy;

/** The only way to write: when it returns, the work is on the disk; when it throws, nothing of it is. */
public interface Durably {

    /**
     * Runs the work in one transaction, or as a part of the one that is already running. Where another write was faster, it is undone
     * and runs again, so what it does beside the database must bear that.
     *
     * @throws dev.stayfixed.platform.problem.Refused when others were faster each time, or the database is away
     */
    <T> T write(Supplier<T> work);

    default void write(Runnable work) {
        write(() -> {
            work.run();
            return true;
        });
    }

    /**
     * Writes what can be made again at any time, alone in one transaction that does not wait for the disk. After a power cut all of it
     * may be gone, but never a part of it, and never something that was written before.
     *
     * @throws dev.stayfixed.platform.problem.Refused as {@link #write}
     */
    default void derive(Runnable work) {
        write(work);
    }

    /**
     * Keeps a name for the running write alone; whoever else asks for it, at any instance, waits until this write has ended. No row is
     * locked for it: a row that others refer to cannot be locked without a deadlock between two who have just referred to it. A vehicle
     * is held before a name, one name is enough for a write, and it takes part in names only after that.
     */
    void hold(String name);

    /** Takes part in a name until the running write ends: any number of writes can, but none while another one holds it. */
    void share(String name);

    /** Keeps a name like {@link #hold}, but never waits: false where another write holds it or takes part in it. */
    boolean holdIfFree(String name);

    /**
     * Runs the work against one state of the database, without changing it.
     *
     * @throws dev.stayfixed.platform.problem.Refused when the database is away
     */
    <T> T read(Supplier<T> work);

    /** What {@link #readThrough} opens to see which shops there are. */
    String SHOPS = "shops";

    /**
     * Reads, before it is known for which shop, only this: which row holds a secret that somebody came with, or which shops there are.
     *
     * @param door the secret as the row holds it, or {@link #SHOPS}
     * @throws dev.stayfixed.platform.problem.Refused when the database is away
     */
    <T> T readThrough(String door, Supplier<T> work);

    /**
     * Connections for a library that writes by itself, one short statement or transaction at a time. They take part in a running
     * write; what is written outside of one is not synced, so it may be lost in a power cut.
     */
    default DataSource connections(DataSource dataSource) {
        return new TransactionAwareDataSourceProxy(dataSource);
    }
}
