package planted.jobs;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import planted.intake.KnowsJobs;

/** An entity that everybody can see and change; and its package knows the one above it. */
@Entity
public class PublicEntity {

    @Id
    private long id;

    private KnowsJobs intake = new KnowsJobs();

    public void setId(long id) {
        this.id = id;
    }

    public String both() {
        return id + " " + intake;
    }
}
