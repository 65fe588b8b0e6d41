package planted.people;

import planted.web.api.PublicController;

/** A room that knows what stands above every room. */
class KnowsTheWeb {

    String show(PublicController controller) {
        return controller.show();
    }
}
