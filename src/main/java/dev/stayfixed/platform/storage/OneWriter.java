package dev.stayfixed.platform.storage;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/**
 * One writer at a time, and one sync for several of them: the last of a group syncs for all before it gives its turn away. So nobody
 * who has written waits behind those who have not begun.
 */
final class OneWriter {

    private final ReentrantLock turn = new ReentrantLock(true);
    private final Runnable sync;
    private final int most;
    private CompletableFuture<Void> group = new CompletableFuture<>();
    private int unsynced;

    /**
     * Nobody writes yet.
     *
     * @param sync forces everything that was written to the disk
     * @param most writers that share a sync while others wait for their turn, at least 1
     */
    OneWriter(Runnable sync, int most) {
        this.sync = sync;
        this.most = most;
    }

    /** Whether the calling thread is the one that writes. */
    boolean isMe() {
        return turn.isHeldByCurrentThread();
    }

    /** How many wait for their turn. */
    int waiting() {
        return turn.getQueueLength();
    }

    /** Returns when the work is on the disk; a sync that fails reaches everybody who counted on it. */
    <T> T write(Supplier<T> work) {
        CompletableFuture<Void> mine;
        T result;
        enter();
        try {
            result = work.get();
            mine = group;
            unsynced++;
        } finally {
            leave();
        }
        try {
            mine.join();
        } catch (CompletionException e) {
            throw e.getCause() instanceof RuntimeException failure ? failure : e;
        }
        return result;
    }

    /** Takes the turn, as often as the thread likes; what is written is not synced for its sake. */
    void enter() {
        turn.lock();
    }

    void leave() {
        try {
            boolean lasts = turn.getHoldCount() > 1;
            if (!lasts && unsynced > 0 && (unsynced >= most || !turn.hasQueuedThreads())) {
                syncForAll();
            }
        } finally {
            turn.unlock();
        }
    }

    private void syncForAll() {
        CompletableFuture<Void> written = group;
        group = new CompletableFuture<>();
        unsynced = 0;
        try {
            sync.run();
            written.complete(null);
        } catch (RuntimeException | Error e) {
            written.completeExceptionally(e);
        }
    }
}
