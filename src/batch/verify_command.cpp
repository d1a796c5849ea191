#include <iostream>

#include "batch/context.hpp"
#include "batch/json.hpp"

namespace sparewell::batch {
namespace {

int run(const Context& context) {
  const auto problems = context.open(store::OpenMode::existing)->verify();
  if (context.json) {
    print({{"problems", problems}});
  } else if (problems.empty()) {
    std::cout << "The clinic file is sound.\n";
  } else {
    for (const auto& problem : problems) std::cout << problem << '\n';
  }
  return problems.empty() ? done : done_with_findings;
}

}  // namespace

void add_verify(Command& app, Context& context) {
  auto* command =
      app.add_subcommand("verify", "Look for damage and broken rules in the clinic file");
  command->callback([&context] { context.run = [&context] { return run(context); }; });
}

}  // namespace sparewell::batch
