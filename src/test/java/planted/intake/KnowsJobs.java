package planted.intake;

import java.time.Instant;
import planted.jobs.PublicRepository;

/** Half of a cycle between two packages; reads the system clock on the way. */
public class KnowsJobs {

    public String now(PublicRepository repository) {
        return repository + " " + Instant.now();
    }
}
