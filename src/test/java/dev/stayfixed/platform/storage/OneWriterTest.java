package dev.stayfixed.platform.storage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(30)
class OneWriterTest {

    private final List<String> done = Collections.synchronizedList(new ArrayList<>());
    private final OneWriter writer = new OneWriter(() -> done.add("sync"), 8);

    @Test
    void whoIsAloneSyncsAtOnce() {
        assertThat(writer.write(() -> "written")).isEqualTo("written");
        write();
        assertThat(done).containsExactly("sync", "write", "sync");
    }

    /** 21 writers in a queue: the ninth begins when the first eight are on the disk. */
    @Test
    void aSyncDoesNotWaitForThoseWhoHaveNotBegun() {
        queued(writer, Collections.nCopies(21, this::write)).forEach(CompletableFuture::join);
        List<String> expected = new ArrayList<>();
        for (int group : new int[] {8, 8, 5}) {
            expected.addAll(Collections.nCopies(group, "write"));
            expected.add("sync");
        }
        assertThat(done).isEqualTo(expected);
    }

    @Test
    void whoWritesWithoutSyncSyncsForTheOthersBeforeIt() {
        Runnable connection = () -> {
            writer.enter();
            done.add("connection");
            writer.leave();
        };
        queued(writer, List.of(this::write, this::write, this::write, connection))
                .forEach(CompletableFuture::join);
        assertThat(done).containsExactly("write", "write", "write", "connection", "sync");
    }

    @Test
    void oneThreadSyncsOnceHoweverOftenItEnters() {
        writer.write(() -> {
            writer.enter();
            writer.leave();
            return done.add("write");
        });
        assertThat(done).containsExactly("write", "sync");
    }

    @Test
    void aFailedSyncReachesEverybodyWhoCountedOnItAndNobodyElse() {
        List<String> syncs = new ArrayList<>();
        OneWriter failing = new OneWriter(
                () -> {
                    syncs.add("sync");
                    if (syncs.size() == 1) {
                        throw new IllegalStateException("disk full");
                    }
                },
                8);
        for (CompletableFuture<?> one : queued(failing, Collections.nCopies(3, () -> failing.write(() -> true)))) {
            assertThatThrownBy(one::join).hasRootCauseMessage("disk full");
        }
        failing.write(() -> true);
        assertThat(syncs).hasSize(2);
    }

    @Test
    void aFailedWriteIsNotCounted() {
        assertThatThrownBy(() -> writer.write(() -> {
                    throw new IllegalStateException("refused");
                }))
                .hasMessage("refused");
        assertThat(done).isEmpty();
    }

    private void write() {
        writer.write(() -> done.add("write"));
    }

    /** All come in this order while another one has the turn. */
    private static List<CompletableFuture<?>> queued(OneWriter writer, List<Runnable> inOrder) {
        List<CompletableFuture<?>> all = new ArrayList<>();
        writer.enter();
        for (Runnable one : inOrder) {
            all.add(CompletableFuture.runAsync(one, task -> new Thread(task).start()));
            while (writer.waiting() < all.size()) {
                Thread.onSpinWait();
            }
        }
        writer.leave();
        return all;
    }
}
