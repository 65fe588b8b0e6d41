package planted.web.api;

import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.web.bind.annotation.RestController;
import planted.jobs.PublicRepository;

/** A controller that everybody can see, with a field that is filled from outside. */
@RestController
public class PublicController {

    @Autowired
    private PublicRepository repository;

    public String show() {
        return String.valueOf(repository);
    }
}
