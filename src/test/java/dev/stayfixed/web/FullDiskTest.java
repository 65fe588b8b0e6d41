package dev.stayfixed.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.FullDisk;
import dev.stayfixed.platform.OtherInstance;
import dev.stayfixed.platform.OwnProcess;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The service while the disk under its H2 file takes nothing more. */
@Timeout(60)
class FullDiskTest {

    private static final String V = "/api/v1/vehicles";

    @Test
    void isSaidClearlyAndHealsWhenSpaceReturns(@TempDir Path folder) {
        String url = FullDisk.url(folder.resolve("stayfixed").toString());
        try (OtherInstance service = new OtherInstance(url, "stayfixed", "")) {
            Client client = new Client(service.port());
            Answer before = client.post(V, "{\"description\":\"before\"}").is(201);
            String body = "{\"description\":\"while it was full\"}";
            String key = UUID.randomUUID().toString();
            FullDisk.full(true);
            try {
                for (int i = 0; i < 3; i++) {
                    isFull(client.post(V, body));
                    isFull(client.post(V, body, "Idempotency-Key", key));
                    assertThat(client.get(V).is(200).at("/items/0/id")).isEqualTo(before.id());
                }
            } finally {
                FullDisk.full(false);
            }
            Answer taken = client.post(V, body, "Idempotency-Key", key).is(201);
            assertThat(client.post(V, body, "Idempotency-Key", key).is(201).id())
                    .isEqualTo(taken.id());
            assertThat(client.get(V).is(200).json().at("/items")).hasSize(2);
        }
    }

    @Test
    void takesNothingNewBeforeItComesToThat(@TempDir Path folder) {
        String url = OwnProcess.url(folder);
        try (OtherInstance service = new OtherInstance(url, "stayfixed", "", "stayfixed.keep-free=1000000TB")) {
            Client client = new Client(service.port());
            Answer refused = client.post(V, "{\"description\":\"one too many\"}");
            isFull(refused);
            assertThat(refused.at("/detail")).contains("MB free", "stayfixed.keep-free");
            assertThat(client.get(V).is(200).json().at("/items")).isEmpty();
            client.get("/", "Accept", "text/html").is(200);
            Answer page = client.post("/jobs/new", "", "Accept", "text/html,*/*;q=0.8")
                    .is(507);
            assertThat(page.header("Content-Type")).startsWith("text/html");
            assertThat(page.body()).contains("<h1>The disk is full</h1>").doesNotContain("{");
        }
    }

    @Test
    void aDamagedFileEndsTheStart(@TempDir Path folder) throws IOException {
        Files.write(folder.resolve("stayfixed.mv.db"), new byte[100_000]);
        assertThatThrownBy(() -> new OtherInstance(OwnProcess.url(folder), "stayfixed", ""))
                .hasStackTraceContaining("the database does not answer: File corrupted")
                .hasStackTraceContaining("stayfixed.mv.db");
    }

    private static void isFull(Answer answer) {
        assertThat(answer.isProblem(507, "storage-full").header("Retry-After")).isEqualTo("60");
    }
}
