package planted.platform;

import planted.jobs.PublicEntity;

/** The platform knows what stands on it. */
public class KnowsJobs {

    public String show(PublicEntity entity) {
        return entity.both();
    }
}
