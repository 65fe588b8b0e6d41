package planted.jobs;

import org.springframework.data.repository.Repository;

/** A repository that everybody can see. */
public interface PublicRepository extends Repository<PublicEntity, Long> {}
