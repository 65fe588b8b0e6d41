package dev.stayfixed.platform.storage;

import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;

/** One sync for everybody who is waiting when it begins: the first to come runs it, the others wait for the result. */
final class SharedSync {

    private final Runnable sync;
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition finished = lock.newCondition();
    private long asked;
    private long synced;
    private boolean running;

    SharedSync(Runnable sync) {
        this.sync = sync;
    }

    /** Returns when a sync that began after this call has succeeded. */
    void await() {
        lock.lock();
        try {
            long mine = ++asked;
            while (synced < mine) {
                if (running) {
                    finished.awaitUninterruptibly();
                } else {
                    runForAll();
                }
            }
        } finally {
            lock.unlock();
        }
    }

    /** How many have asked for a sync that has not succeeded yet. */
    long waiting() {
        lock.lock();
        try {
            return asked - synced;
        } finally {
            lock.unlock();
        }
    }

    /** A failure reaches the one who ran it; each of the others then tries for itself. */
    private void runForAll() {
        long covered = asked;
        running = true;
        lock.unlock();
        boolean succeeded = false;
        try {
            sync.run();
            succeeded = true;
        } finally {
            lock.lock();
            running = false;
            synced = succeeded ? covered : synced;
            finished.signalAll();
        }
    }
}
