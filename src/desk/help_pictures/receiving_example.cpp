#include "clinic/say.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/help_pictures/steps.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

picture::Maker receiving_example() {
  using picture::SignForm;
  const auto use_by = date_words(make_date(2028, 6, 30));
  StepDiagram steps;
  steps.stages = {
      {{said("Scan"), say("Item {}, lot {}, use by {}", "LN01-26", "B14", use_by)}},
      {{said("Order line"),
        say("{}: {} ordered, {} came. What is short stays open on \"Deliveries\".", "PO-31", 6,
            4)}},
      {{said("A patient waits"), say("{} piece for {}", 1, "P-0103"), SignForm::flag},
       {said("Shelf"), say("{} pieces, kept with their lot and use-by date", 2), SignForm::square},
       {said("Quarantine"), say("{} piece of another lot, which is recalled: nobody gets it", 1),
        SignForm::triangle, true}}};
  return as_example(steps_picture(std::move(steps)), said("Help with receiving: an example"),
                    said("An example: where the pieces of a delivery go"));
}

}  // namespace sparewell::desk
