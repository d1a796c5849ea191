#include <iostream>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/patient_place.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string patient;
  std::string place;
};

int run(const Context& context, const Options& options) {
  const auto store = context.open(store::OpenMode::existing);
  const auto booked = desk::in_one_work(
      *store, context.author("a patient changed branch"), [&](store::UnitOfWork& work) {
        return desk::book_patient_place(work, {options.patient}, options.place);
      });
  if (!booked) throw WrongUse{booked.error().sentence};
  if (context.json) {
    print({{"patient_ref", options.patient}, {"place", options.place}});
  } else {
    for (const auto& note : booked->notes) std::cout << note << '\n';
  }
  return done;
}

}  // namespace

void add_patient_place(Command& app, Context& context) {
  auto* command = app.add_subcommand("patient-place", "Say to which branch a patient belongs");
  const auto options = std::make_shared<Options>();
  command->add_option("--patient", options->patient, "The patient's reference")->required();
  command->add_option("--place", options->place, "A store; \"\" for the clinic's main place")
      ->required();
  command->callback([&context, options] {
    context.run = [&context, options] { return run(context, *options); };
  });
}

}  // namespace sparewell::batch
