#include <iostream>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/billing/paper_noting.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  desk::PaperRequest request;
  std::string side;
  std::string issued;
  std::string dated;
};

Json json_of(const PartPaper& paper) {
  return {{"patient_ref", paper.patient.text},
          {"side", word(paper.side)},
          {"item_code", paper.item.text},
          {"lot", paper.lot},
          {"serial", paper.serial},
          {"issued_on", batch::json_of(paper.issued_on)},
          {"paper", paper.paper},
          {"dated_on", batch::json_of(paper.dated_on)},
          {"words", paper.words},
          {"noted_by", paper.noted_by}};
}

int note(const Context& context, const Options& options) {
  auto request = options.request;
  if (!options.side.empty()) request.side = parse_word<Side>(options.side);
  if (!options.issued.empty()) request.issued_on = date_option("--issued", options.issued);
  request.dated_on =
      options.dated.empty() ? context.today() : date_option("--dated", options.dated);
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author("a paper of a part was noted"));
  const auto noted = desk::note_paper(*work, request, context.today());
  if (!noted) throw WrongUse{noted.error().sentence};
  work->commit();
  Json papers = Json::array();
  for (const auto& paper : *noted) {
    if (context.json) {
      papers.push_back(json_of(paper));
    } else {
      std::cout << desk::paper_words(paper) << '\n';
    }
  }
  if (context.json) print({{"papers", std::move(papers)}});
  return done;
}

}  // namespace

void add_paper(Command& app, Context& context) {
  auto* command = app.add_subcommand("note-paper", "Put a paper of a part on record");
  const auto options = std::make_shared<Options>();
  auto& request = options->request;
  command->add_option("--patient", request.patient, "The patient's reference")->required();
  command->add_option("--item", request.item, "The item's code")->required();
  command
      ->add_option("--paper", request.paper,
                   "order, reason, condition, cost share, or your own word")
      ->required();
  command->add_option("--says", request.words, "What it says in short, or where it lies");
  command->add_option("--by", request.by, "Who puts it on record");
  command->add_option("--dated", options->dated, "The day on the paper (default: today)");
  command->add_option("--side", options->side, "left or right")->one_of({"left", "right"});
  command->add_option("--issued", options->issued, "The day on which the part was handed out");
  command->add_option("--lot", request.lot, "The part's lot");
  command->add_option("--serial", request.serial, "The part's serial number");
  command->callback([&context, options] {
    context.run = [&context, options] { return note(context, *options); };
  });
}

}  // namespace sparewell::batch
