package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class SharedSyncTest {

    /** While the first sync runs, the others wait; the next one serves them all. */
    @Test
    void oneSyncServesAllWhoWaited() {
        AtomicInteger syncs = new AtomicInteger();
        CountDownLatch firstRuns = new CountDownLatch(1);
        CountDownLatch othersWait = new CountDownLatch(1);
        SharedSync shared = new SharedSync(() -> {
            if (syncs.incrementAndGet() == 1) {
                firstRuns.countDown();
                await(othersWait);
            }
        });
        List<CompletableFuture<Void>> waiting = new ArrayList<>();
        waiting.add(start(shared));
        await(firstRuns);
        for (int i = 0; i < 20; i++) {
            waiting.add(start(shared));
        }
        while (shared.waiting() < 21) {
            Thread.onSpinWait();
        }
        othersWait.countDown();
        waiting.forEach(CompletableFuture::join);
        assertThat(syncs).hasValue(2);
    }

    @Test
    void aFailedSyncIsNoSync() {
        AtomicInteger syncs = new AtomicInteger();
        SharedSync shared = new SharedSync(() -> {
            if (syncs.incrementAndGet() == 1) {
                throw new IllegalStateException("disk full");
            }
        });
        assertThatThrownBy(shared::await).hasMessage("disk full");
        shared.await();
        assertThat(syncs).hasValue(2);
    }

    private static CompletableFuture<Void> start(SharedSync shared) {
        return CompletableFuture.runAsync(shared::await, task -> new Thread(task).start());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
