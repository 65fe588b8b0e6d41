package dev.stayfixed.people.access;

import dev.stayfixed.people.EntryLinks;
import dev.stayfixed.people.EntryLinks.Purpose;
import dev.stayfixed.people.People;
import dev.stayfixed.people.Person;
import dev.stayfixed.people.Role;
import dev.stayfixed.people.entry.OwnerEntry;
import dev.stayfixed.platform.CurrentShop;
import dev.stayfixed.platform.problem.Mistake;
import dev.stayfixed.platform.problem.ProblemType;
import dev.stayfixed.platform.problem.Refused;
import dev.stayfixed.platform.storage.Durably;
import org.springframework.stereotype.Component;

/** The first person of a service, whom nobody can invite. */
@Component
public class FirstOwner {

    private final People people;
    private final EntryLinks links;
    private final AtThisMachine atThisMachine;
    private final Durably durably;

    FirstOwner(People people, EntryLinks links, AtThisMachine atThisMachine, Durably durably) {
        this.people = people;
        this.links = links;
        this.atThisMachine = atThisMachine;
        this.durably = durably;
    }

    public boolean isWanted() {
        return !people.isAnybodyHere();
    }

    /**
     * Makes the first owner. From then on everybody signs in.
     *
     * @param trusted whether whoever asks sits at the machine of the service; else the code of its start is wanted
     * @throws Refused where there is somebody, or the code is not the one
     */
    public void enter(OwnerEntry entry, boolean trusted) {
        durably.write(() -> {
            durably.hold("people");
            if (!isWanted()) {
                throw new Refused(
                        ProblemType.NOT_ALLOWED,
                        "found that there is an owner, expected none yet; sign in, or ask them for an invitation");
            }
            if (!trusted
                    && !links.use(
                            Purpose.FIRST_OWNER,
                            entry.code() == null ? "" : entry.code().strip())) {
                throw Refused.content(
                        new Mistake("code", "another one", "the code that the start of the service wrote to its log"));
            }
            Person owner = people.add(CurrentShop.DEFAULT, entry.mail(), entry.name(), Role.OWNER);
            people.choosePassword(owner.id(), entry.password());
            links.endFirstOwner();
        });
        atThisMachine.somebodyCame();
    }
}
