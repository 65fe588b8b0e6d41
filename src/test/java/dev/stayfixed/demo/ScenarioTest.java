package dev.stayfixed.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.stayfixed.platform.OnH2;
import dev.stayfixed.platform.SetClock;
import dev.stayfixed.web.Answer;
import dev.stayfixed.web.Client;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.springframework.boot.test.web.server.LocalServerPort;

@OnH2
class ScenarioTest {

    @LocalServerPort
    int port;

    @Test
    void theScenarioPlaysToItsEnd() {
        ScenarioPlayer player = new ScenarioPlayer("http://127.0.0.1:" + port, new Blanks(SetClock.NOW));
        assertThat(player.play("scenario.json")).isGreaterThan(20);
        Set<String> states = new TreeSet<>();
        Answer jobs = new Client(port).get("/api/v1/jobs?limit=200").is(200);
        jobs.json()
                .at("/items")
                .forEach(job -> job.at("/faults")
                        .forEach(fault -> states.add(fault.at("/standing/state").asString())));
        assertThat(states).contains("CONFIRMED_FIXED").hasSizeGreaterThanOrEqualTo(3);
    }

    @Test
    void daysAndNamesAreFilledIn() {
        Blanks blanks = new Blanks(SetClock.NOW);
        blanks.keep("car", "7");
        assertThat(blanks.fill("/vehicles/${car}/drives \"@-3d 08:15\""))
                .isEqualTo("/vehicles/7/drives \"2026-06-27T08:15:00Z\"");
        assertThatThrownBy(() -> blanks.fill("${bus}"))
                .hasMessageContaining("${bus}")
                .hasMessageContaining("car");
    }
}
