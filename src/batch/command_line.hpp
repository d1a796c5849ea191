/// The commands and options that are typed after the program's name, read by CLI11. Its headers
/// take seconds to compile in every file that includes them, so only command_line.cpp does.
#pragma once

#include <deque>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace CLI {
class App;
class Option;
}  // namespace CLI

namespace sparewell::batch {

/// One option of a command; every member changes it and returns it again.
class Option {
 public:
  explicit Option(CLI::Option& option) : option_{&option} {}
  Option* required();
  /// Both ends are allowed.
  Option* within(int least, int most);
  Option* within(double least, double most);
  Option* one_of(const std::vector<std::string>& words);
  /// May be given several times, with one value each.
  Option* repeatable();
  /// One or several values with commas between them.
  Option* comma_separated();
  /// The help says the value that it has before it is given.
  Option* shows_default();

 private:
  CLI::Option* option_;
};

/// A command with its options and commands of its own. Lives as long as the whole command line.
class Command {
 public:
  explicit Command(CLI::App& app) : app_{&app} {}
  Command(const Command&) = delete;
  Command& operator=(const Command&) = delete;

  Command* add_subcommand(const std::string& name, const std::string& help);
  /// `target` keeps its value when the option is not given, and must outlive the command line. A
  /// name without dashes stands for a value by its position.
  template <class Target>
  Option* add_option(const std::string& name, Target& target, const std::string& help);
  Option* add_flag(const std::string& name, bool& target, const std::string& help);
  /// Called when the command was named, after its options are read.
  void callback(std::function<void()> named);
  void require_subcommand();
  /// Options of the commands around it may also stand behind its name.
  void fallthrough();

 private:
  Option* keep(CLI::Option& option);

  CLI::App* app_;
  std::deque<Command> commands_;
  std::deque<Option> options_;
};

/// All that can be typed.
class CommandLine {
 public:
  CommandLine(const std::string& program, const std::string& version, const std::string& help,
              const std::string& footer);
  ~CommandLine();
  CommandLine(const CommandLine&) = delete;
  CommandLine& operator=(const CommandLine&) = delete;

  [[nodiscard]] Command& all() { return *all_; }
  /// Reads the words and calls what was named. Prints help, version and what is wrong; true when
  /// there is something to run, otherwise `wrong` says whether the words could not be read.
  [[nodiscard]] bool read(int count, char** words, bool& wrong);

 private:
  std::unique_ptr<CLI::App> app_;
  std::unique_ptr<Command> all_;
};

}  // namespace sparewell::batch
