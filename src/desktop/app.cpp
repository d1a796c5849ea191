#include "desktop/app.hpp"

#include <clocale>
#include <cstdio>
#include <ctime>

#include <unistd.h>
#include <wx/cmdline.h>
#include <wx/msgdlg.h>
#include <wx/stdpaths.h>
#include <wx/translation.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
#include "desk/remembered.hpp"
#include "desktop/main_frame.hpp"
#include "desktop/self_report.hpp"
#include "desktop/text.hpp"

namespace sparewell::desktop {
namespace {

/// Today where the clinic is, not in Greenwich.
Date today_here() {
  const auto now = std::time(nullptr);
  std::tm local{};
  localtime_r(&now, &local);
  return make_date(local.tm_year + 1900, static_cast<unsigned>(local.tm_mon + 1),
                   static_cast<unsigned>(local.tm_mday));
}

std::filesystem::path memory_file() {
  const auto folder = from_wx(wxStandardPaths::Get().GetUserConfigDir());
  return std::filesystem::path{folder} / "sparewell" / "window.json";
}

}  // namespace

App::App() = default;
App::~App() = default;

void App::OnInitCmdLine(wxCmdLineParser& parser) {
  parser.SetSwitchChars("-");
  parser.AddLongSwitch("help", "show this help", wxCMD_LINE_OPTION_HELP);
  parser.AddLongSwitch("version", "show the version");
  parser.AddLongOption("today", "the day to work out, YYYY-MM-DD (default: the clock's)");
  // Read before the language is known, so it stays English.
  parser.AddLongOption("language", "the language to speak this time: en, es");
  parser.AddLongOption("report",
                       "for tests: a file that says which texts are cut and when the window does "
                       "not answer");
  parser.AddParam("clinic file", wxCMD_LINE_VAL_STRING, wxCMD_LINE_PARAM_OPTIONAL);
}

bool App::OnCmdLineParsed(wxCmdLineParser& parser) {
  if (parser.Found("version")) {
    std::puts("sparewell " SPAREWELL_VERSION);
    return false;
  }
  today_ = today_here();
  wxString text;
  if (parser.Found("today", &text)) {
    const auto day = parse_iso_date(from_wx(text));
    if (!day) {
      std::fputs("sparewell: --today takes a day as YYYY-MM-DD\n", stderr);
      return false;
    }
    today_ = *day;
  }
  if (parser.Found("language", &text)) language_ = from_wx(text);
  if (parser.Found("report", &text)) report_file_ = from_wx(text);
  if (parser.GetParamCount() > 0) path_ = from_wx(parser.GetParam(0));
  return true;
}

bool App::OnInit() {
  SetAppName("sparewell");
  SetAppDisplayName("Sparewell");
  wxStandardPaths::Get().SetFileLayout(wxStandardPaths::FileLayout_XDG);
  if (!wxApp::OnInit()) return false;
  speak_as_remembered();
  if (!report_file_.empty()) report_ = std::make_unique<SelfReport>(report_file_);
  auto* frame = new MainFrame{today_, memory_file()};
  frame->Show();
  frame->start(path_);
  return true;
}

void App::speak_as_remembered() {
  // Texts are UTF-8 on every computer, also where no locale is set up.
  std::setlocale(LC_CTYPE, "C.UTF-8");
  auto ways = desk::recall(memory_file()).ways;
  if (!language_.empty()) ways.language = language_;
  const std::filesystem::path program{from_wx(wxStandardPaths::Get().GetExecutablePath())};
  desk::follow(ways, program.parent_path().parent_path() / "share" / "locale");
  // What the toolkit itself says, such as in print previews.
  auto* translations = new wxTranslations;
  wxTranslations::Set(translations);
  translations->SetLanguage(to_wx(spoken_language()));
  translations->AddStdCatalog();
}

int App::OnExit() {
  const int status = wxApp::OnExit();
  if (!again_) return status;
  std::vector<std::string> words;
  for (const auto& word : argv.GetArguments()) words.push_back(from_wx(word));
  std::vector<char*> given;
  for (auto& word : words) given.push_back(word.data());
  given.push_back(nullptr);
  desk::restore_language_setting();
  execv(from_wx(wxStandardPaths::Get().GetExecutablePath()).c_str(), given.data());
  return status;  // only where it could not be started
}

bool App::OnExceptionInMainLoop() {
  wxMessageBox(to_wx(desk::describe_failure(std::current_exception())), "Sparewell",
               wxOK | wxICON_ERROR);
  return true;
}

}  // namespace sparewell::desktop

wxIMPLEMENT_APP(sparewell::desktop::App);
