package dev.stayfixed.demo;

import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * One request of a scenario. Of the three kinds of body at most one is given.
 *
 * @param path under the service, such as /api/v1/jobs; ${name} stands for the id of an earlier answer
 * @param body JSON; ${name} as in the path, "@-3d 08:15" stands for 08:15 UTC three days before today,
 *     "file:a/b.txt" for the content of that file beside the scenario
 * @param bodyText plain text
 * @param bodyFile a file beside the scenario: .json is JSON, anything else plain text
 * @param logFile a recorded log beside the scenario; it goes with the JSON body, both as parts of a form
 * @param saveAs the name under which the id of the answer is kept
 * @param expectStatus any 2xx, if missing
 */
record Step(
        String method,
        String path,
        @Nullable JsonNode body,
        @Nullable String bodyText,
        @Nullable String bodyFile,
        @Nullable String logFile,
        @Nullable String saveAs,
        @Nullable Integer expectStatus,
        @Nullable String comment) {

    boolean isExpected(int status) {
        return expectStatus == null ? status / 100 == 2 : status == expectStatus;
    }
}
