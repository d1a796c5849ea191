#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/finding_json.hpp"
#include "desk/reexamined_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::batch {
namespace {

using Change = std::function<Expected<desk::Reexamined>(store::UnitOfWork&)>;

/// Makes the change, or with `only_look` says what it would do.
int change(const Context& context, const std::string& why, bool only_look, const Change& make) {
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author(why));
  const auto changed = make(*work);
  if (!changed) throw WrongUse{changed.error().sentence};
  const auto clinic = desk::read_for_examination(*work);
  const ClinicIndex index{clinic};
  if (!only_look) work->commit();
  if (context.json) {
    Json document = json_of(*changed, index);
    document["recorded"] = !only_look;
    print(document);
  } else {
    for (const auto& line : desk::reexamined_lines(*changed, index)) std::cout << line << '\n';
    if (only_look) std::cout << "Nothing was changed.\n";
  }
  return changed->newly.empty() ? done : done_with_findings;
}

void add_constituents(Command& app, Context& context) {
  struct Options {
    std::string item;
    std::string names;
    bool check = false;
  };
  const auto options = std::make_shared<Options>();
  auto* command = app.add_subcommand(
      "constituents", "Change what an item declares, and see who is newly affected");
  command->add_option("--item", options->item, "The item's code")->required();
  command->add_option("--set", options->names, "All constituents, with ';' between them; \"\" for none")
      ->required();
  command->add_flag("--check", options->check, "Only say what the change would do");
  command->callback([&context, options] {
    context.run = [&context, options] {
      return change(context, fmt::format("constituents of {}", options->item), options->check,
                    [&](store::UnitOfWork& work) {
                      return desk::set_constituents(work, {options->item}, desk::parts_of_list(options->names, ";"),
                                                    context.today());
                    });
    };
  });
}

struct RelationOptions {
  std::string substance;
  std::string relation;
  std::string other;
  std::string source;
  bool check = false;

  [[nodiscard]] SubstanceRow row() const {
    const auto read = parse_word<SubstanceRelation>(relation);
    if (!read) {
      throw WrongUse{fmt::format("The relation '{}' is none of: {}.", relation,
                                 allowed_words<SubstanceRelation>())};
    }
    return {substance, *read, other, source, std::nullopt};
  }
};

void add_relation_options(Command& command, RelationOptions& options) {
  command.add_option("substance", options.substance, "A substance")->required();
  command.add_option("relation", options.relation, "\"is a\", \"same as\" or \"may contain\"")
      ->required();
  command.add_option("other", options.other, "Its group, its other name, or what it may contain")
      ->required();
  command.add_flag("--check", options.check, "Only say what the change would do");
}

int list(const Context& context) {
  Json rows = Json::array();
  for (const auto& row : context.clinic_on(context.today()).substances) {
    rows.push_back({{"substance", row.substance},
                    {"relation", word(row.relation)},
                    {"other", row.other},
                    {"source", row.source},
                    {"withdrawn_on", json_of(row.withdrawn_on)}});
    if (context.json) continue;
    std::cout << fmt::format("{} {} {} ({}){}\n", row.substance, word(row.relation), row.other,
                             row.source, row.withdrawn_on ? ", withdrawn" : "");
  }
  if (context.json) {
    print({{"relations", std::move(rows)}});
  } else if (rows.empty()) {
    std::cout << "The clinic has added nothing to the table of substances.\n";
  }
  return done;
}

void add_relations(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "substance", "What the clinic knows of substances beyond the program's table");
  command->require_subcommand();
  command->fallthrough();
  command->add_subcommand("list", "What the clinic added")->callback([&context] {
    context.run = [&context] { return list(context); };
  });
  const auto added = std::make_shared<RelationOptions>();
  auto* add = command->add_subcommand("add", "Note how two substances are related");
  add_relation_options(*add, *added);
  add->add_option("--source", added->source, "Where that is known from")->required();
  add->callback([&context, added] {
    context.run = [&context, added] {
      return change(context, "substance relation", added->check, [&](store::UnitOfWork& work) {
        return desk::add_relation(work, added->row(), context.today());
      });
    };
  });
  const auto taken_back = std::make_shared<RelationOptions>();
  auto* withdraw = command->add_subcommand("withdraw", "No longer hold a noted relation for true");
  add_relation_options(*withdraw, *taken_back);
  withdraw->callback([&context, taken_back] {
    context.run = [&context, taken_back] {
      return change(context, "substance relation withdrawn", taken_back->check,
                    [&](store::UnitOfWork& work) {
                      return desk::withdraw_relation(work, taken_back->row(), context.today());
                    });
    };
  });
}

void add_noting(Command& app, Context& context) {
  struct Options {
    Sensitivity sensitivity;
    std::string on;
    bool check = false;
  };
  const auto options = std::make_shared<Options>();
  auto* command = app.add_subcommand("note-sensitivity", "Record a sensitivity of a patient");
  auto& sensitivity = options->sensitivity;
  command->add_option("--patient", sensitivity.patient.text, "The patient's reference")->required();
  command->add_option("--substance", sensitivity.substance, "What the patient reacts to")
      ->required();
  command->add_option("--established-by", sensitivity.established_by,
                      "patch test, observed or reported")
      ->required();
  command->add_option("--reaction", sensitivity.reaction, "Such as redness or blisters");
  command->add_option("--on", options->on, "The day it was noted (default: today)");
  command->add_flag("--check", options->check, "Only say what the change would do");
  command->callback([&context, options] {
    context.run = [&context, options] {
      auto noted = options->sensitivity;
      noted.noted_on =
          options->on.empty() ? context.today() : date_option("--on", options->on);
      return change(context, "sensitivity noted", options->check, [&](store::UnitOfWork& work) {
        return desk::note_sensitivity(work, noted, context.today());
      });
    };
  });
}

}  // namespace

void add_substance(Command& app, Context& context) {
  add_constituents(app, context);
  add_relations(app, context);
  add_noting(app, context);
}

}  // namespace sparewell::batch
