#include "clinic/say.hpp"
#include "desk/help_pictures/examples.hpp"
#include "desk/help_pictures/steps.hpp"

namespace sparewell::desk {

picture::Maker import_example() {
  using picture::SignForm;
  StepDiagram steps;
  steps.stages = {
      {{said("Your folder"), "catalogue.csv, patients.csv, issued.csv, stock.csv"}},
      {{said("Dry run"),
        say("{} rows are read, {} would be refused. Nothing is written.", 412, 3)}},
      {{said("Clinic file"), say("\"Import it now\" writes {} rows.", 409), SignForm::check},
       {said("Folder \"rejects\""),
        say("{} rows with their file, line, column and reason. Correct them there and import that "
            "folder.",
            3),
        SignForm::cross, true}}};
  steps.back = true;
  return as_example(steps_picture(std::move(steps)), said("Help with importing: an example"),
                    said("An example: from a folder of files into the clinic file"));
}

}  // namespace sparewell::desk
