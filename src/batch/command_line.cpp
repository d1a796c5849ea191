#include "batch/command_line.hpp"

#include <optional>

#include <CLI/CLI.hpp>

namespace sparewell::batch {

Option* Option::required() {
  option_->required();
  return this;
}

Option* Option::within(int least, int most) {
  option_->check(CLI::Range(least, most));
  return this;
}

Option* Option::within(double least, double most) {
  option_->check(CLI::Range(least, most));
  return this;
}

Option* Option::one_of(const std::vector<std::string>& words) {
  option_->check(CLI::IsMember(words));
  return this;
}

Option* Option::repeatable() {
  option_->expected(1)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
  return this;
}

Option* Option::comma_separated() {
  constexpr int any_number = 1'000'000;
  option_->delimiter(',')->expected(1, any_number);
  return this;
}

Option* Option::shows_default() {
  option_->capture_default_str();
  return this;
}

Command* Command::add_subcommand(const std::string& name, const std::string& help) {
  return &commands_.emplace_back(*app_->add_subcommand(name, help));
}

template <class Target>
Option* Command::add_option(const std::string& name, Target& target, const std::string& help) {
  return keep(*app_->add_option(name, target, help));
}

// Every type of value that a command reads; the linker names one that is missing.
template Option* Command::add_option(const std::string&, std::string&, const std::string&);
template Option* Command::add_option(const std::string&, int&, const std::string&);
template Option* Command::add_option(const std::string&, long&, const std::string&);
template Option* Command::add_option(const std::string&, double&, const std::string&);
template Option* Command::add_option(const std::string&, std::optional<std::string>&,
                                     const std::string&);
template Option* Command::add_option(const std::string&, std::optional<int>&, const std::string&);
template Option* Command::add_option(const std::string&, std::optional<double>&,
                                     const std::string&);
template Option* Command::add_option(const std::string&, std::vector<std::string>&,
                                     const std::string&);
template Option* Command::add_option(const std::string&, std::vector<int>&, const std::string&);
template Option* Command::add_option(const std::string&, std::vector<double>&,
                                     const std::string&);

Option* Command::add_flag(const std::string& name, bool& target, const std::string& help) {
  return keep(*app_->add_flag(name, target, help));
}

void Command::callback(std::function<void()> named) {
  app_->callback(std::move(named));
}

void Command::require_subcommand() {
  app_->require_subcommand(1);
}

void Command::fallthrough() {
  app_->fallthrough();
}

Option* Command::keep(CLI::Option& option) {
  return &options_.emplace_back(option);
}

CommandLine::CommandLine(const std::string& program, const std::string& version,
                         const std::string& help, const std::string& footer)
    : app_{std::make_unique<CLI::App>(help)}, all_{std::make_unique<Command>(*app_)} {
  app_->name(program);
  app_->set_version_flag("--version", version);
  app_->require_subcommand(1);
  app_->fallthrough();
  app_->footer(footer);
}

CommandLine::~CommandLine() = default;

bool CommandLine::read(int count, char** words, bool& wrong) {
  wrong = false;
  try {
    app_->parse(count, words);
  } catch (const CLI::ParseError& error) {
    wrong = app_->exit(error) != 0;
    return false;
  }
  return true;
}

}  // namespace sparewell::batch
