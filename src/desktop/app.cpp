#include "desktop/app.hpp"

#include <cstdio>
#include <ctime>

#include <wx/cmdline.h>
#include <wx/msgdlg.h>
#include <wx/stdpaths.h>

#include "clinic/say.hpp"
#include "desk/describe_failure.hpp"
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
  parser.AddLongSwitch("help", said("show this help"), wxCMD_LINE_OPTION_HELP);
  parser.AddLongSwitch("version", said("show the version"));
  parser.AddLongOption("today", said("the day to work out, YYYY-MM-DD (default: the clock's)"));
  parser.AddLongOption(
      "report", said("for tests: a file that says which texts are cut and when the window does "
                     "not answer"));
  parser.AddParam(said("clinic file"), wxCMD_LINE_VAL_STRING, wxCMD_LINE_PARAM_OPTIONAL);
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
      std::fprintf(stderr, said("sparewell: --today takes a day as YYYY-MM-DD\n"));
      return false;
    }
    today_ = *day;
  }
  if (parser.Found("report", &text)) report_file_ = from_wx(text);
  if (parser.GetParamCount() > 0) path_ = from_wx(parser.GetParam(0));
  return true;
}

bool App::OnInit() {
  SetAppName("sparewell");
  SetAppDisplayName(said("Sparewell"));
  wxStandardPaths::Get().SetFileLayout(wxStandardPaths::FileLayout_XDG);
  if (!wxApp::OnInit()) return false;
  if (!report_file_.empty()) report_ = std::make_unique<SelfReport>(report_file_);
  auto* frame = new MainFrame{today_, memory_file()};
  frame->Show();
  frame->start(path_);
  return true;
}

bool App::OnExceptionInMainLoop() {
  wxMessageBox(to_wx(desk::describe_failure(std::current_exception())), said("Sparewell"),
               wxOK | wxICON_ERROR);
  return true;
}

}  // namespace sparewell::desktop

wxIMPLEMENT_APP(sparewell::desktop::App);
