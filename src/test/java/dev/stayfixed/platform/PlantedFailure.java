package dev.stayfixed.platform;

import io.swagger.v3.oas.annotations.Hidden;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RestController;

/** A mistake of the service, so that its answer can be tested. */
@Hidden
@RestController
class PlantedFailure {

    @GetMapping("/planted-failure")
    String fail() {
        throw new IllegalStateException("planted");
    }
}
