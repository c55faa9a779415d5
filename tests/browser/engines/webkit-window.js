// Run by gjs: a window of the size of a phone around WebKit's view, with a store that outlives it, which WebKitWebDriver may drive.
import Gio from 'gi://Gio'
import GLib from 'gi://GLib'
import Gtk from 'gi://Gtk?version=3.0'
import WebKit2 from 'gi://WebKit2?version=4.1'
import System from 'system'

const [profile, downloads, scripts] = System.programArgs
const before = JSON.parse(new TextDecoder().decode(GLib.file_get_contents(scripts)[1]))
const complain = `addEventListener('error', (event) => console.error('error: ' + (event.error?.stack ?? event.message)))
addEventListener('unhandledrejection', (event) => console.error('rejected: ' + (event.reason?.stack ?? event.reason)))`

Gtk.init(null)
const context = WebKit2.WebContext.new_with_website_data_manager(new WebKit2.WebsiteDataManager({ base_data_directory: profile, base_cache_directory: `${profile}/cache` }))
context.set_automation_allowed(true)
context.set_preferred_languages(['en-GB'])
context.connect('download-started', (_, download) => {
  download.connect('decide-destination', (_download, name) => {
    const written = `${profile}/${name}.part`
    download.set_destination(GLib.filename_to_uri(written, null))
    // Seen in the folder once it is whole.
    download.connect('finished', () => Gio.File.new_for_path(written).move(Gio.File.new_for_path(`${downloads}/${name}`), Gio.FileCopyFlags.OVERWRITE, null, null))
    return true
  })
})
context.connect('automation-started', (_, session) => {
  const info = WebKit2.ApplicationInfo.new()
  info.set_name('bathkeeper-window')
  info.set_version(WebKit2.get_major_version(), WebKit2.get_minor_version(), WebKit2.get_micro_version())
  session.set_application_info(info)
  session.connect('create-web-view', () => {
    const content = new WebKit2.UserContentManager()
    for (const script of [complain, ...before]) content.add_script(WebKit2.UserScript.new(script, WebKit2.UserContentInjectedFrames.TOP_FRAME, WebKit2.UserScriptInjectionTime.START, null, null))
    const view = new WebKit2.WebView({ web_context: context, is_controlled_by_automation: true, user_content_manager: content })
    // A picture that the engine makes up stands in for the camera.
    Object.assign(view.get_settings(), { enable_media_stream: true, enable_mock_capture_devices: true, enable_write_console_messages_to_stdout: true })
    view.connect('permission-request', (_view, request) => {
      request.allow()
      return true
    })
    const window = new Gtk.Window({ default_width: 360, default_height: 740, decorated: false })
    window.add(view)
    window.show_all()
    return view
  })
})
Gtk.main()
